package gapwise.server.page.studies;

import gapwise.wording.Values;

/**
 * What a group reports of an outcome.
 *
 * @param whole all that it reports, as files tell it
 * @param brief one number with its clock, as a line of a list shows it
 */
public record ArmValue(Values whole, Values brief) {}
