/**
 * The task {@code agreement}: how far raters agree.
 *
 * <p>Start at {@link gapwise.analysis.agreement.AgreementTask}.
 */
package gapwise.analysis.agreement;
