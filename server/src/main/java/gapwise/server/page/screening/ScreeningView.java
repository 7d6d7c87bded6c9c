package gapwise.server.page.screening;

import gapwise.screening.Flow;
import gapwise.screening.Protocol;
import gapwise.server.page.Site;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.TwoWidths;
import java.util.List;
import java.util.stream.Stream;

/** The screening of a review at a glance, or why there is none. */
public sealed interface ScreeningView {
  /** What the page stands in. */
  Site site();

  /** No reference is kept yet. */
  record Nothing(Site site) implements ScreeningView {}

  /**
   * As it stands.
   *
   * @param stages each stage
   * @param flow the counts
   * @param drawing the flow drawn
   * @param take its files
   * @param protocol what the team agreed on
   * @param protocolVersion which version that is, 0 for the usual one
   * @param proposals why the review leaves a study out, where no reason here says so
   * @param asked whether these are asked for as further reasons
   */
  record Under(
      Site site,
      List<AtStage> stages,
      Flow flow,
      TwoWidths drawing,
      TakeFigure take,
      Protocol protocol,
      int protocolVersion,
      List<String> proposals,
      boolean asked)
      implements ScreeningView {
    /** Whether reasons of the review stand in the form. */
    public boolean proposed() {
      return asked && !proposals.isEmpty();
    }

    /** The reasons that stand in the form. */
    public List<String> reasons() {
      return proposed()
          ? Stream.concat(protocol.reasons().stream(), proposals.stream()).toList()
          : protocol.reasons();
    }
  }

  /**
   * One stage.
   *
   * @param papers that are read here
   * @param decided of these
   * @param apart of which two chose differently
   * @param readers what each has read
   * @param agreement how far each two agree, in whole sentences
   */
  record AtStage(
      String stage,
      String label,
      int papers,
      int decided,
      int apart,
      List<Read> readers,
      List<String> agreement) {}

  /**
   * What one person has read, and what is left for her.
   *
   * @param own whether whoever looks at the page may read on in her name
   */
  record Read(String who, int read, int left, String href, boolean own) {}
}
