/** A launch between the click in the course and the signed message; good for one authentication request. */
export interface Launch {
  activity: string;
  person: string;
  /** The session that began it; no other may finish it. */
  session: string;
  target: 'iframe' | 'window';
  message: 'LtiResourceLinkRequest' | 'LtiSubmissionReviewRequest';
  /** Whose work is to be reviewed; null from the head of a column. */
  forUser: string | null;
}

export interface Launches {
  /** Keeps the launch and gives the `lti_message_hint` that names it. */
  begin(launch: Launch): string;
  /** The launch of the hint, once; afterwards the hint is used up. */
  take(hint: string, session: string): Launch | null;
}

const idIn = (hint: string): string | null => {
  try {
    const { launchid } = JSON.parse(hint) as { launchid?: unknown };
    return typeof launchid === 'string' ? launchid : null;
  } catch {
    return null;
  }
};

export const createLaunches = (): Launches => {
  const open = new Map<string, Launch>();
  return {
    begin(launch) {
      const launchid = `launch_${crypto.randomUUID()}`;
      open.set(launchid, launch);
      return JSON.stringify({ activity: launch.activity, launchid });
    },
    take(hint, session) {
      const id = idIn(hint);
      const launch = id === null ? undefined : open.get(id);
      if (id === null || launch?.session !== session) return null;
      open.delete(id);
      return launch;
    },
  };
};
