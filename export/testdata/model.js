// Holds files against the rules of glTF 2.0 by the Khronos Group's own validator
// and prints what it found as JSON, file by file.
const validator = require("gltf-validator"), fs = require("fs");
(async () => {
  const out = {};
  for (const name of process.argv.slice(2)) {
    const r = await validator.validateBytes(new Uint8Array(fs.readFileSync(name)));
    out[name.split("/").pop()] = { issues: r.issues, triangles: r.info ? r.info.totalTriangleCount : 0 };
  }
  process.stdout.write(JSON.stringify(out));
})();
