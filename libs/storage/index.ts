/** Everything that is kept: PostgreSQL, its own or a given one, and the repositories over it. */
export { openStorage } from './connect.js';
export type { Repositories, Storage, StorageOptions } from './connect.js';
export { clearAll, keepClearing } from './keep-clearing.js';
export type { Cleared } from './repositories/clearing.js';
export { listenInbox } from './listen-inbox.js';
export type { ChangeNotice, InboxListener, InboxNotice, JudgedNotice } from './listen-inbox.js';
export { migrate, MigrationError } from './migrate.js';
export { storageTrouble, type StorageTrouble } from './trouble.js';
export { WorkshopBusyError } from './results.js';
export type { Changed, Created } from './results.js';
export { startEmbeddedPostgres } from './embedded/start-embedded-postgres.js';
export type { EmbeddedPostgres, EmbeddedPostgresOptions } from './embedded/start-embedded-postgres.js';
export { HomeUnusableError, explainHome, prepareHome } from './home-folder.js';
export { DatabaseStartError, HomeInUseError, UnsupportedPlatformError } from './embedded/errors.js';
export { written, type Written } from './session.js';
export type {
  AnswerKey,
  FoundAnswer,
  Idempotency,
  KeptAnswer,
  OnceResult,
  StoredResponse,
} from './repositories/idempotency.js';
export type { AccessKey, Keys } from './repositories/keys.js';
export type { Library, CatalogueRepository, Stored } from './repositories/library.js';
export type { Judgements, KeptJudgement } from './repositories/judgements.js';
export type { Log, LoggedEntry } from './repositories/log.js';
export type { LotFacts, Lots, StoredLot } from './repositories/lots.js';
export type { DeliveredNudge, Nudges, NudgeStatus, StoredNudge } from './repositories/nudges.js';
export type { PhotoFacts } from './repositories/photos.js';
export type { HeldRun } from './repositories/hold-run.js';
export type { PlanBasis } from './repositories/plan-basis.js';
export type { LivePlan, PlanRevisionHead, Plans } from './repositories/plans.js';
export type { DesiredNudge, ReconciledNudges } from './repositories/reconcile-nudges.js';
export type { RunChange, RunHead, Runs, RunSnapshot, RunState, StoredRun } from './repositories/runs.js';
export type { PlanRevision, PlanToSave, SavedPlan, StoredAlong } from './repositories/plan-to-save.js';
export type { SignInCode, SignInCodes } from './repositories/sign-in-codes.js';
export type { Stock, StoredStockEntry } from './repositories/stock.js';
export type { KeptTeachings, TeachingStanding, Teachings } from './repositories/teachings.js';
export type { StoredWorkshop, Workshops } from './repositories/workshops.js';
