import { newSigningKey } from './keys.ts';
import { createLaunches, type Launches } from './launches.ts';
import { createSessions, type Sessions } from './sessions.ts';
import type { ActivitySettings, Settings } from './settings.ts';
import { type Grade, type LineItem, openState, type SchoolState, type StateFile } from './state.ts';
import { createTroubles, type Troubles } from './troubles.ts';

/** An activity with the number of its resource link, counted from 1 in the order of the course page. */
export interface Activity extends ActivitySettings {
  id: string;
}

/** Everything that the school's pages and services share. */
export interface School {
  settings: Settings;
  activities: readonly Activity[];
  state: SchoolState;
  save: StateFile['save'];
  sessions: Sessions;
  launches: Launches;
  troubles: Troubles;
}

const freshState = async (): Promise<SchoolState> => ({
  signingKey: await newSigningKey(),
  lineItems: [],
  nextLineItem: 1,
  grades: {},
  accepted: [],
  tokens: {},
});

/** Adds a line item and gives it its number. */
export const addLineItem = (state: SchoolState, item: Omit<LineItem, 'id'>): LineItem => {
  const added = { id: String(state.nextLineItem), ...item };
  state.nextLineItem += 1;
  state.lineItems.push(added);
  return added;
};

/** The grades of a column, by person. */
export const columnOf = (state: SchoolState, item: LineItem): Record<string, Grade> => {
  state.grades[item.id] ??= {};
  return state.grades[item.id] as Record<string, Grade>;
};

const giveColumn = (state: SchoolState, activity: Activity): void => {
  if (activity.points === null) return;
  if (state.lineItems.some((item) => item.resourceLinkId === activity.id)) return;
  addLineItem(state, {
    label: activity.title,
    scoreMaximum: activity.points,
    resourceLinkId: activity.id,
    ...(activity.custom.activity ? { resourceId: activity.custom.activity } : {}),
  });
};

export const openSchool = async (settings: Settings, file: string): Promise<School> => {
  const { state, save } = await openState(file, freshState);
  const activities = settings.activities.map((activity, index) => ({
    ...activity,
    id: String(index + 1),
  }));
  for (const activity of activities) giveColumn(state, activity);
  await save();
  return {
    settings,
    activities,
    state,
    save,
    sessions: createSessions(),
    launches: createLaunches(),
    troubles: createTroubles(),
  };
};
