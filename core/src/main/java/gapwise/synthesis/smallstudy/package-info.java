/**
 * Whether small studies tell another story than large ones: tests of a funnel plot's asymmetry, and
 * trim and fill. Each test is one class behind {@link gapwise.synthesis.smallstudy.SmallStudyTest}
 * and one line in {@link gapwise.synthesis.smallstudy.SmallStudyTests}, where to start.
 *
 * <p>Judging why studies differ does not belong here, nor does drawing.
 */
package gapwise.synthesis.smallstudy;
