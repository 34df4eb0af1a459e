"""What a rig comes to: each slot (stage, load state, use) worked out, judged and given a verdict."""
