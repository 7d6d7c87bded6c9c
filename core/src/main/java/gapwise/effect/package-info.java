/**
 * One study at a time: what it reports, its effect and the variance of that effect per measure, how
 * an effect is carried back to what people read, conversions from medians, exact intervals.
 *
 * <p>Start at {@link gapwise.effect.Measure}; all measures are listed in {@link
 * gapwise.effect.Measures}, those between many arms in {@code gapwise.effect.arms}. Pooling and
 * bones do not belong here.
 */
package gapwise.effect;
