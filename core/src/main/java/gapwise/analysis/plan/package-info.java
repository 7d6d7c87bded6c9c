/**
 * What every plan has and how it is read: text, size, form, defaults, rules.
 *
 * <p>Start at {@link gapwise.analysis.plan.Task}: a task tells its word, defaults, rules and
 * settings. Settings of one task do not belong here.
 */
package gapwise.analysis.plan;
