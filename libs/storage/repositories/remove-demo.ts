import type { Session } from '../session.js';

/**
 * Removes a demo with everything that refers to it. What refers goes before what it refers to; a table that is missing here
 * makes the database refuse the rest, as no reference cascades.
 */
export async function removeDemo({ db }: Session, workshopId: string): Promise<void> {
  // The database refuses to remove logs and plans unless this is set, and even then those of any workshop but a demo.
  await db.$executeRaw`SELECT set_config('benchtide.clearing', 'on', true)`;
  const where = { where: { workshopId } };
  await db.idempotencyKey.deleteMany(where);
  await db.nudge.deleteMany(where);
  await db.lot.deleteMany(where);
  await db.runTeaching.deleteMany(where);
  await db.planJudgement.deleteMany(where);
  await db.benchLog.deleteMany(where);
  await db.stockEntry.deleteMany(where);
  await db.planRevision.deleteMany(where);
  await db.photo.deleteMany(where);
  await db.run.deleteMany(where);
  await db.pieceDesign.deleteMany(where);
  await db.recipe.deleteMany(where);
  await db.fat.deleteMany(where);
  await db.mould.deleteMany(where);
  await db.signInCode.deleteMany(where);
  await db.accessKey.deleteMany(where);
  await db.workshop.delete({ where: { id: workshopId } });
}
