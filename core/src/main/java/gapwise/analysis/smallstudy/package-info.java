/**
 * Whether small studies tell another story than large ones: tests, trim and fill, the funnel.
 *
 * <p>Start at {@link gapwise.analysis.smallstudy.SmallStudyPart}.
 */
package gapwise.analysis.smallstudy;
