"""What a rig is made of, before any discipline looks at it: parts, places, stages, load states, the bare trailer."""
