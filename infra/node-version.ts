/** Imported first by every entry file: what follows is TypeScript run as it stands, which older versions cannot do. */
const major = Number(process.versions.node.split(".")[0]);

if (major < 24) {
  console.error(
    `Asburied needs Node 24 and was started with Node ${process.versions.node}. Run it through npm (npm start, npm test): Node 24 comes with npm ci.`,
  );
  process.exit(1);
}
