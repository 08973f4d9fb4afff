import { FairQueue } from '../compute/fair-queue.js';
import { ApiProblem } from '../problems/api-problem.js';

/** Changes that may wait for their turn, of one workshop. */
const MOST_WAITING = 200;

/** 0: something was logged. 1: anything else that makes a plan. */
export type TurnUrgency = 0 | 1;

interface Workshop {
  busy: boolean;
  readonly waiting: FairQueue<() => void>;
}

/**
 * Lets the changes of a workshop come one after the other within this process, before any of them takes a connection
 * or plans: each plan is made around the ones before, so planning two at once only means planning one of them again.
 */
export class WorkshopTurns {
  private readonly workshops = new Map<string, Workshop>();

  /** @throws ApiProblem 503 when too many wait already */
  async take<T>(workshopId: string, urgency: TurnUrgency, work: () => Promise<T>): Promise<T> {
    await this.begin(workshopId, urgency);
    try {
      return await work();
    } finally {
      this.end(workshopId);
    }
  }

  private async begin(workshopId: string, urgency: TurnUrgency): Promise<void> {
    const workshop = this.workshops.get(workshopId) ?? { busy: false, waiting: new FairQueue<() => void>() };
    this.workshops.set(workshopId, workshop);
    if (!workshop.busy) {
      workshop.busy = true;
      return;
    }
    if (workshop.waiting.size() >= MOST_WAITING) {
      throw new ApiProblem(503, 'busy', { says: 'changes-wait', count: MOST_WAITING }, {}, 5);
    }
    await new Promise<void>((resolve) => {
      workshop.waiting.push(resolve, '', urgency);
    });
  }

  private end(workshopId: string): void {
    const next = this.workshops.get(workshopId)?.waiting.next();
    if (next === undefined) this.workshops.delete(workshopId);
    else next();
  }
}
