import { useMutation } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import type { Message } from '#contract';
import { answered, api, ApiError, type Schemas } from '../api/client.js';
import { newId } from '../api/new-id.js';
import { snapped } from '../look/local-days.js';
import type { TideMark, TideRun } from '../tide/tide-run.js';
import { useReplanned, whatIf, type Document, type WhatIfAnswer } from './use-run.js';

/** A stage in the hand: where it is held, and what the plan would be if it were let go there. */
export interface Moving {
  readonly held: { readonly id: string; readonly at: number } | undefined;
  readonly mark: TideMark | undefined;
  /** Of the place where it is held, or of the last one that could be worked out. */
  readonly answer: WhatIfAnswer | undefined;
  readonly isTrying: boolean;
  readonly error: Error | undefined;
  /** Why there is no plan with the stage there; empty: there is one, or it is not known. */
  readonly refusal: readonly Message[];
  readonly isKept: boolean;
  /** Taken up by key or button rather than dragged. */
  readonly isLifted: boolean;
  /** Odds of the plan with the stage where it is, as of now: others may have taken hours since it was made. */
  readonly before: Document['odds'];
  readonly lift: (id: string) => void;
  readonly drag: (id: string, at: number) => void;
  readonly leave: () => void;
  readonly keep: () => void;
  readonly isKeeping: boolean;
}

const STEP_MIN = 15;

/** Tries a stage wherever it is held, one question at a time and always the latest; keeps it only when told to. */
export function useMoving(run: Schemas['StoredRun'], document: Document, tide: TideRun | undefined): Moving {
  const [held, setHeld] = useState<Moving['held']>();
  const [found, setFound] = useState<{ readonly answer?: WhatIfAnswer; readonly error?: Error }>({});
  const [isTrying, setTrying] = useState(false);
  const [isKept, setKept] = useState(false);
  const [isLifted, setLifted] = useState(false);
  const [before, setBefore] = useState<{ readonly id: string; readonly odds: Document['odds'] }>();
  const wanted = useRef<Moving['held']>(undefined);
  const asking = useRef(false);
  const replanned = useReplanned(run.id);
  const keeping = useMutation({
    mutationFn: (pins: Pins) =>
      answered(
        api.POST('/api/runs/{id}/plan', {
          params: { path: { id: run.id }, header: { 'Idempotency-Key': newId() } },
          body: { pins },
        }),
      ),
    onSuccess: async () => {
      await replanned();
      letGo();
      setKept(true);
    },
  });
  const ask = async (): Promise<void> => {
    if (asking.current) return;
    asking.current = true;
    setTrying(true);
    const mark = tide?.marks.find(({ id }) => id === wanted.current?.id);
    if (mark !== undefined && before?.id !== mark.id) {
      const now = await whatIf(run.id, { pins: pinsOf(mark) }).catch(() => undefined);
      setBefore({ id: mark.id, odds: now?.plan.odds ?? document.odds });
    }
    for (let tried: Moving['held']; wanted.current !== undefined && wanted.current !== tried;) {
      tried = wanted.current;
      const next = await whatIf(run.id, { pins: pinsOf(tried) }).then(
        (answer) => ({ answer }),
        (error: unknown) => ({ error: error instanceof Error ? error : new ApiError(0, undefined) }),
      );
      if (wanted.current !== undefined) setFound(next);
    }
    asking.current = false;
    setTrying(false);
  };
  const hold = (id: string, at: number): void => {
    const next = { id, at: snapped(at, STEP_MIN) };
    if (wanted.current?.id === next.id && wanted.current.at === next.at) return;
    wanted.current = next;
    setHeld(next);
    setKept(false);
    void ask();
  };
  const letGo = (): void => {
    wanted.current = undefined;
    setHeld(undefined);
    setFound({});
    setBefore(undefined);
    setLifted(false);
    keeping.reset();
  };
  return {
    held,
    mark: tide?.marks.find(({ id }) => id === held?.id),
    answer:
      document.status === 'planned' && found.answer?.plan.status !== 'planned' ? undefined : found.answer,
    isTrying,
    error: keeping.error ?? found.error,
    refusal: found.error === undefined ? refusalOf(found.answer) : [],
    isKept,
    isLifted,
    before: before?.odds ?? document.odds,
    lift: (id) => {
      const mark = tide?.marks.find((each) => each.id === id);
      if (mark === undefined) return;
      setLifted(true);
      hold(id, mark.at);
    },
    drag: hold,
    leave: letGo,
    keep: () => held !== undefined && keeping.mutate(pinsOf(held)),
    isKeeping: keeping.isPending,
  };
}

type Pins = { readonly stage: string; readonly startAt: string }[];

function pinsOf({ id, at }: { readonly id: string; readonly at: number }): Pins {
  return [{ stage: id.slice(0, id.lastIndexOf('#')), startAt: new Date(at).toISOString() }];
}

/** Why there is no plan with the stage there. */
function refusalOf(answer: WhatIfAnswer | undefined): readonly Message[] {
  if (answer === undefined || answer.plan.status === 'planned') return [];
  const { resolution, conflict } = answer.plan;
  return resolution?.timing ? [resolution.timing] : conflict;
}
