/** The arrows of the house: which room may know which. Run by `npm run check:imports`. */
const only = (name, from, allowed) => ({
  name,
  severity: 'error',
  comment: `${from} may import only itself and: ${allowed.join(', ') || 'nothing'}`,
  from: { path: `^src/${from}/` },
  to: { path: '^src/', pathNot: [`^src/${from}/`, ...allowed.map((room) => `^src/${room}`)] },
});

module.exports = {
  forbidden: [
    only('scene', 'scene', ['core/']),
    only('sim', 'sim', ['core/', 'scene/']),
    only('export', 'export', ['core/', 'scene/', 'sim/']),
    only('cli', 'cli', ['sim/', 'scene/', 'export/', 'core/']),
    only('state', 'state', ['scene/', 'sim/', 'core/']),
    only('tools', 'tools', ['state/', 'core/']),
    only('stage', 'stage', ['state/', 'tools/', 'core/']),
    only('ui', 'ui', ['state/', 'tools/', 'core/']),
    only('platform', 'platform', ['sim/']),
    {
      name: 'core-is-pure',
      severity: 'error',
      comment: 'core is pure: no package, no Node, nothing from outside it',
      from: { path: '^src/core/' },
      to: { pathNot: '^src/core/' },
    },
    {
      name: 'three-only-on-stage',
      severity: 'error',
      from: { path: '^src/', pathNot: ['^src/stage/', '^src/export/glb'] },
      to: { path: 'node_modules/(three|@react-three)/' },
    },
    {
      name: 'rigid-body-engine-only-in-spill',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/stage/spill' },
      to: { path: 'node_modules/cannon-es/' },
    },
    {
      name: 'sim-runs-anywhere',
      severity: 'error',
      from: { path: '^src/(sim|scene)/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'every-import-leads-somewhere',
      severity: 'error',
      comment: 'an import that does not resolve is invisible to every other rule',
      from: {},
      to: { couldNotResolve: true },
    },
    { name: 'no-circles', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'tests-are-not-product',
      severity: 'error',
      from: { path: '^src/' },
      to: { path: '^tests/' },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default', 'require', 'types'],
    },
  },
};
