const AGS = 'https://purl.imsglobal.org/spec/lti-ags/scope';

export const LINE_ITEM = `${AGS}/lineitem`;
export const LINE_ITEM_READ = `${AGS}/lineitem.readonly`;
export const RESULT_READ = `${AGS}/result.readonly`;
export const SCORE = `${AGS}/score`;
export const ROSTER_READ =
  'https://purl.imsglobal.org/spec/lti-nrps/scope/contextmembership.readonly';

/** Named in every launch, `lineitem.readonly` although `lineitem` is there (seen at a real platform). */
export const AGS_SCOPES = [LINE_ITEM, LINE_ITEM_READ, RESULT_READ, SCORE];

/** All that the school can permit to a tool. */
export const ALL_SCOPES = [...AGS_SCOPES, ROSTER_READ];
