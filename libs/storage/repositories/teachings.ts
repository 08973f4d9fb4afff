import type { RunTeachings, WorkshopFacts } from '#contract';
import { Prisma } from '../generated/client.js';
import { fromJson, type Session } from '../session.js';
import { LIVE } from './runs.js';

/** How far what is kept of a run's teachings goes, and what it should rest on. */
export interface TeachingStanding {
  readonly runId: string;
  /** The room of the run's own time, if it has one. */
  readonly room: WorkshopFacts['room'] | null;
  /** The last entry of its log. */
  readonly sequence: number;
  /** Null where nothing is kept. */
  readonly basis: string | null;
  readonly through: number | null;
}

export interface KeptTeachings {
  readonly runId: string;
  readonly basis: string;
  /** The last entry that it knows of, by sequence. */
  readonly through: number;
  readonly teachings: RunTeachings;
}

/** What the log of each run teaches, kept as it was worked out. Runs that logged nothing have no row. */
export interface Teachings {
  /**
   * Keeps what runs teach, in one statement. A version becomes the highest of the workshop, unless the run teaches what it
   * taught before. Only who holds the workshop may do this.
   */
  put(workshopId: string, kept: readonly KeptTeachings[]): Promise<void>;
  /** The highest version, of all runs but one; 0: nothing is kept. Another one as soon as any of them teaches else. */
  version(workshopId: string, butRun: string | null): Promise<number>;
  /** Another text when other runs are over, or one of them teaches else. */
  overMark(workshopId: string, butRun: string | null): Promise<string>;
  /** Of all runs but one; of those that are over, or of those that are not. */
  list(workshopId: string, filter: { butRun: string | null; over?: boolean }): Promise<RunTeachings[]>;
  /** Whether the latest entry of the workshop is known to what is kept. */
  knowsLatest(workshopId: string): Promise<boolean>;
  /** Of every run that logged something. */
  standing(workshopId: string): Promise<TeachingStanding[]>;
}

export function teachings({ db }: Session): Teachings {
  return {
    async put(workshopId, kept) {
      if (kept.length === 0) return;
      await db.$executeRaw(teachingsUpsert(workshopId, kept));
    },
    async version(workshopId, butRun) {
      const rows = await db.$queryRaw<{ version: number | null }[]>`
        SELECT max(version) AS version FROM run_teaching
        WHERE workshop_id = ${workshopId}::uuid AND run_id IS DISTINCT FROM ${butRun}::uuid`;
      return rows[0]?.version ?? 0;
    },
    async overMark(workshopId, butRun) {
      const rows = await db.$queryRaw<{ mark: string | null }[]>`
        SELECT md5(string_agg(concat_ws(':', run.id, kept.version), ',' ORDER BY run.id)) AS mark
        FROM run_teaching kept JOIN run ON run.workshop_id = kept.workshop_id AND run.id = kept.run_id
        WHERE kept.workshop_id = ${workshopId}::uuid AND NOT run.state = ANY (${[...LIVE]})
          AND run.id IS DISTINCT FROM ${butRun}::uuid`;
      return rows[0]?.mark ?? '';
    },
    async list(workshopId, { butRun, over }) {
      const rows = await db.$queryRaw<{ teachings: Prisma.JsonValue }[]>`
        SELECT kept.teachings
        FROM run_teaching kept JOIN run ON run.workshop_id = kept.workshop_id AND run.id = kept.run_id
        WHERE kept.workshop_id = ${workshopId}::uuid AND run.id IS DISTINCT FROM ${butRun}::uuid
          AND (${over ?? null}::boolean IS NULL OR ${over ?? null}::boolean <> (run.state = ANY (${[...LIVE]})))
        ORDER BY run.created_at, run.id`;
      // Worked out by rules of today (see `standing`), so it has the shape of today.
      return rows.map((row) => fromJson<RunTeachings>(row.teachings));
    },
    async knowsLatest(workshopId) {
      const rows = await db.$queryRaw<{ known: boolean | null }[]>`
        SELECT (SELECT max(sequence) FROM bench_log WHERE workshop_id = ${workshopId}::uuid)
          <= (SELECT max(through) FROM run_teaching WHERE workshop_id = ${workshopId}::uuid) AS known`;
      return rows[0]?.known === true;
    },
    async standing(workshopId) {
      const rows = await db.$queryRaw<StandingRow[]>`
        SELECT run.id, run.snapshot -> 'room' AS room, log.sequence, kept.basis, kept.through
        FROM run
        JOIN LATERAL (
          SELECT max(sequence) AS sequence FROM bench_log
          WHERE workshop_id = run.workshop_id AND run_id = run.id) log ON log.sequence IS NOT NULL
        LEFT JOIN run_teaching kept ON kept.workshop_id = run.workshop_id AND kept.run_id = run.id
        WHERE run.workshop_id = ${workshopId}::uuid
        ORDER BY run.created_at, run.id`;
      return rows.map(({ id, room, sequence, basis, through }) => ({
        runId: id,
        room: fromJson<WorkshopFacts['room'] | null>(room),
        sequence: Number(sequence),
        basis,
        through: through === null ? null : Number(through),
      }));
    },
  };
}

interface StandingRow {
  readonly id: string;
  readonly room: Prisma.JsonValue;
  readonly sequence: bigint;
  readonly basis: string | null;
  readonly through: bigint | null;
}

/** See `Teachings.put`. @param kept one at least */
export function teachingsUpsert(workshopId: string, kept: readonly KeptTeachings[]): Prisma.Sql {
  const runs = kept.map(({ runId }) => runId);
  const bases = kept.map(({ basis }) => basis);
  const ends = kept.map(({ through }) => through);
  const texts = kept.map(({ teachings: taught }) => JSON.stringify(taught));
  return Prisma.sql`
    INSERT INTO run_teaching (workshop_id, run_id, basis, through, teachings, version)
    SELECT ${workshopId}::uuid, each.run_id, each.basis, each.through, each.teachings::jsonb,
      each.place + (SELECT coalesce(max(version), 0) FROM run_teaching WHERE workshop_id = ${workshopId}::uuid)
    FROM unnest(${runs}::uuid[], ${bases}::text[], ${ends}::bigint[], ${texts}::text[])
      WITH ORDINALITY AS each (run_id, basis, through, teachings, place)
    ON CONFLICT (workshop_id, run_id) DO UPDATE SET
      basis = EXCLUDED.basis, through = EXCLUDED.through, teachings = EXCLUDED.teachings,
      version = CASE WHEN run_teaching.teachings = EXCLUDED.teachings
        THEN run_teaching.version ELSE EXCLUDED.version END`;
}
