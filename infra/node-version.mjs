// Plain JavaScript and loaded first (node --import), because an older Node stops at the first line of TypeScript.
const major = Number(process.versions.node.split(".")[0]);

if (major < 24) {
  console.error(
    `Asburied needs Node 24 and was started with Node ${process.versions.node}. Node 24 comes with npm ci, whose install script of the package "node" must be allowed to run; npm start, npm test and npm run demo then use it.`,
  );
  process.exit(1);
}
