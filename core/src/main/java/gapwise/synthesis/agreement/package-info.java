/**
 * How far people who judged the same agree: kappa for categories, intraclass correlation and limits
 * of agreement for measurements.
 *
 * <p>Start at {@link gapwise.synthesis.agreement.Kappa} or {@link
 * gapwise.synthesis.agreement.IntraclassCorrelation}. Nothing about extraction or screening belongs
 * here.
 */
package gapwise.synthesis.agreement;
