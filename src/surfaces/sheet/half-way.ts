import { type CommandResult, DispatchResult, type Model, type WorkbookData } from '@odoo/o-spreadsheet';

interface Change {
  readonly target: Record<string, unknown>;
  readonly key: string;
  readonly before: unknown;
}

/** Private to the grid, so this much is told here; tests/surfaces/half-way.test.ts fails if it moves. */
interface Inside {
  dispatch: (type: string, payload?: object) => DispatchResult;
  readonly status: number;
  readonly config: { mode: string };
  readonly state: { changes: Change[] };
  /** The last change that was made whole, and those that it would try to send again. */
  readonly session: { readonly lastLocalOperation: unknown; pendingMessages: unknown[] };
}

const ready = 0;

export interface Rescue {
  /** Goes on with this workbook: as it was before the command, or after it where only its sending failed. */
  readonly goOn: (data: WorkbookData) => void;
  /** Nothing more can be done with this one. */
  readonly giveUp: () => void;
}

function takeBack(changes: readonly Change[]): void {
  for (const { target, key, before } of [...changes].reverse()) {
    if (before === undefined) delete target[key];
    else target[key] = before;
  }
}

/** The workbook leaves a model that can no longer be trusted, which takes nothing from then on. */
export function rescueFrom(model: Model, { goOn, giveUp }: Rescue): void {
  const { config, session } = model as unknown as Inside;
  config.mode = 'readonly';
  session.pendingMessages = [];
  try {
    goOn(model._exportData(false));
  } catch {
    giveUp();
  }
}

/**
 * A command on which the grid stops half-way leaves it for ever within that command: it goes on to draw what is typed, works
 * nothing out and tells nobody of a change, so that nothing is kept. Here it is taken back, and the workbook goes on in a new model.
 */
export function surviveFaults(model: Model, rescue: Rescue): void {
  const inside = model as unknown as Inside;
  const { dispatch } = inside;
  inside.dispatch = (type, payload) => {
    if (inside.status !== ready) return dispatch(type, payload);
    const last = inside.session.lastLocalOperation;
    inside.state.changes = [];
    try {
      return dispatch(type, payload);
    } catch {
      const whole = inside.session.lastLocalOperation !== last;
      const inHistory = type === 'REQUEST_UNDO' || type === 'REQUEST_REDO';
      if (!whole && !inHistory) takeBack(inside.state.changes);
      if (whole || !inHistory) rescueFrom(model, rescue);
      else {
        inside.config.mode = 'readonly';
        rescue.giveUp();
      }
      return new DispatchResult('Readonly' as CommandResult);
    }
  };
}
