/** The tests need the Node that package.json pins; a runner started past npm gets the system's. */
export default function setup(): void {
  const major = Number(process.versions.node.split('.')[0]);
  if (major < 24) throw new Error(`Node ${process.versions.node} runs these tests. Run: npm test`);
}
