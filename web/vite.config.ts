import { defineConfig } from "vite";

// The built files are committed and shipped inside the wheel, so that nobody who installs Boxwright needs node.
export default defineConfig({
  base: "/",
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  build: {
    outDir: "../src/boxwright/web/dist",
    emptyOutDir: true,
    target: "es2022",
    modulePreload: false,
    assetsInlineLimit: 0,
    reportCompressedSize: false,
  },
});
