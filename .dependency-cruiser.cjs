/** Module boundaries. Each rule says why it stands; `npm run boundaries` fails the build when one is crossed. */
module.exports = {
  forbidden: [
    {
      name: 'engine-depends-on-nothing',
      comment:
        'The browser and the server must judge alike and the rules must be readable alone: the engine imports only itself.',
      severity: 'error',
      from: { path: '^engine/', pathNot: '^engine/cli/' },
      to: { pathNot: '^engine/' },
    },
    {
      name: 'engine-cli-is-the-edge',
      comment: 'The command line may read files; it may not pull in the server or the client.',
      severity: 'error',
      from: { path: '^engine/cli/' },
      to: { path: '^(client|server|tests|deploy)/' },
    },
    {
      name: 'engine-core-ignores-its-cli',
      comment: 'Input and output stay at the edge.',
      severity: 'error',
      from: { path: '^engine/', pathNot: '^engine/cli/' },
      to: { path: '^engine/cli/' },
    },
    {
      name: 'engine-has-two-doors',
      comment:
        'What others use of the engine is what its doors export; the inside may move freely.',
      severity: 'error',
      from: { path: '^(client|server|deploy)/' },
      to: { path: '^engine/', pathNot: '^engine/(index|child|wire)\\.ts$' },
    },
    {
      name: 'child-page-takes-the-small-door',
      comment:
        'Patterns, sampling and pupils must never reach a child: the work page imports engine/child only.',
      severity: 'error',
      from: { path: '^client/(mat|work|launch|api|ui|words)/' },
      to: { path: '^engine/index\\.ts$' },
    },
    {
      name: 'client-never-imports-server',
      comment: 'They meet on the wire (server/contract.ts), nowhere else.',
      severity: 'error',
      from: { path: '^client/' },
      to: { path: '^(server|tests|deploy)/' },
    },
    {
      name: 'server-never-imports-client',
      comment: 'The server serves the built pages as files; it runs none of them.',
      severity: 'error',
      from: { path: '^server/' },
      to: { path: '^(client|tests|deploy)/' },
    },
    {
      name: 'only-lti-imports-ltijs',
      comment:
        'ltijs leaves gaps open that server/lti closes; every other way to it would open them again.',
      severity: 'error',
      from: { path: '^(engine|client|server|deploy)/', pathNot: '^server/lti/' },
      to: { path: 'node_modules/ltijs/' },
    },
    {
      name: 'only-stores-touch-mongoose',
      comment: 'Queries that name the person are kept where they can be read together.',
      severity: 'error',
      from: { path: '^server/', pathNot: '(store|schema)\\.ts$|^server/database/' },
      to: { path: 'node_modules/(mongoose|mongodb)/' },
    },
    {
      name: 'school-speaks-only-the-standard',
      comment: 'The try-out school stands for a real platform: it may know nothing of the tool.',
      severity: 'error',
      from: { path: '^deploy/tryout/school/' },
      to: { path: '^(engine|client|server)/' },
    },
    {
      name: 'oracle-is-independent',
      comment: 'A check that shares code with what it checks proves nothing.',
      severity: 'error',
      from: { path: '^tests/oracle/' },
      to: { path: '^(engine|client|server)/' },
    },
    {
      name: 'no-circles',
      comment: 'Modules in a circle can only be understood all at once.',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'no-unresolvable',
      comment: 'An import that leads nowhere fails at run time.',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '(^|/)dist/' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default'],
    },
  },
};
