/**
 * @typedef {{ type: string, name?: string }} Name
 * @typedef {{ callee: Name, arguments: unknown[] }} Call
 * @typedef {{ property: Name }} Member
 * @typedef {{ report(found: { node: Call | Member, message: string }): void }} Context
 */

const noNow = 'Pure code is told the time; it does not look at a clock.';
const noSecureContext = 'Missing on pages over plain http; newId() of apps/web/api works on all.';

/** Rules of this project that the linter has no settings for. */
export default {
  meta: { name: 'project' },
  rules: {
    /** `new Date()` and `Date()` look at the clock, `new Date(ms)` does not. */
    'no-present-time': {
      create: (/** @type {Context} */ context) => ({
        NewExpression(/** @type {Call} */ node) {
          if (isNamed(node.callee, 'Date') && node.arguments.length === 0)
            context.report({ node, message: noNow });
        },
        CallExpression(/** @type {Call} */ node) {
          if (isNamed(node.callee, 'Date')) context.report({ node, message: noNow });
        },
      }),
    },
    /** Ids that a browser makes only where the page is secure. */
    'no-random-uuid': {
      create: (/** @type {Context} */ context) => ({
        MemberExpression(/** @type {Member} */ node) {
          if (isNamed(node.property, 'randomUUID')) context.report({ node, message: noSecureContext });
        },
      }),
    },
  },
};

/**
 * @param {Name} node
 * @param {string} name
 */
function isNamed(node, name) {
  return node.type === 'Identifier' && node.name === name;
}
