package gapwise.decision.cost;

import java.util.OptionalDouble;

/**
 * One method against another: differences of means, and the share of draws in each quarter of the
 * plane of effect and cost. What is alike counts as cheaper and as worse.
 *
 * @param cost extra cost
 * @param effect extra effect
 * @param dearerBetter share of draws, 0 to 1
 * @param dearerWorse share of draws
 * @param cheaperBetter share of draws
 * @param cheaperWorse share of draws
 * @param ratio extra cost for one unit of extra effect; only where nearly all draws are dearer and
 *     better, since a ratio means something else, or nothing, in every other quarter
 */
public record Increment(
    double cost,
    double effect,
    double dearerBetter,
    double dearerWorse,
    double cheaperBetter,
    double cheaperWorse,
    OptionalDouble ratio) {}
