package gapwise.course;

import gapwise.figure.value.Limits;
import java.util.Optional;

/**
 * The share of patients who had the event by some month.
 *
 * @param month since the clock started
 * @param share 0 to 1
 * @param limits of 95 %; empty where none or all had it, of which these limits know nothing
 * @param curves that speak of it
 * @param atRisk patients still followed shortly before, in whom the event had not come
 */
public record ShareBy(int month, double share, Optional<Limits> limits, int curves, int atRisk) {}
