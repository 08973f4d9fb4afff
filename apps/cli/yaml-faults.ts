import type { ErrorCode } from 'yaml';

/** What can be wrong with a file as YAML, as far as a person can mend it. */
export type YamlFault =
  | 'alias'
  | 'aliases-unfold'
  | 'block-in-flow'
  | 'collection'
  | 'directive'
  | 'escape'
  | 'indent'
  | 'key-on-one-line'
  | 'key-too-long'
  | 'list-as-key'
  | 'missing-sign'
  | 'order'
  | 'start-of-text'
  | 'tab'
  | 'tag'
  | 'too-deep'
  | 'two-documents'
  | 'unexpected';

/** The parser's codes; its messages are English and for those who know YAML's grammar. */
const byCode: Readonly<Partial<Record<string, YamlFault>>> = {
  ALIAS_PROPS: 'alias',
  BAD_ALIAS: 'alias',
  BAD_COLLECTION_TYPE: 'collection',
  BAD_DIRECTIVE: 'directive',
  BAD_DQ_ESCAPE: 'escape',
  BAD_INDENT: 'indent',
  BAD_PROP_ORDER: 'order',
  BAD_SCALAR_START: 'start-of-text',
  BLOCK_AS_IMPLICIT_KEY: 'list-as-key',
  BLOCK_IN_FLOW: 'block-in-flow',
  KEY_OVER_1024_CHARS: 'key-too-long',
  MISSING_CHAR: 'missing-sign',
  MULTILINE_IMPLICIT_KEY: 'key-on-one-line',
  MULTIPLE_ANCHORS: 'order',
  MULTIPLE_DOCS: 'two-documents',
  MULTIPLE_TAGS: 'order',
  RESOURCE_EXHAUSTION: 'too-deep',
  TAB_AS_INDENT: 'tab',
  TAG_RESOLVE_FAILED: 'tag',
  UNEXPECTED_TOKEN: 'unexpected',
} satisfies Partial<Record<ErrorCode, YamlFault>>;

/** What a code of the parser stands for; undefined where it is new, or of a kind that should not happen. */
export function yamlFault(code: string): YamlFault | undefined {
  return byCode[code];
}

/** Why a file that was read as YAML makes no content. @param cause what the parser threw */
export function unfoldingFault(cause: unknown): YamlFault {
  return cause instanceof RangeError ? 'too-deep' : 'aliases-unfold';
}
