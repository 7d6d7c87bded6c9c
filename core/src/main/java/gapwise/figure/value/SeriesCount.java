package gapwise.figure.value;

import static gapwise.sentence.Sentences.say;

import java.util.Map;

/**
 * How many groups of patients numbers come from, and of how many studies: one study can report
 * several groups.
 *
 * @param groups 0 or more
 * @param studies at most as many as groups
 */
public record SeriesCount(int groups, int studies) {
  public SeriesCount {
    if (studies < 0 || groups < studies) {
      throw new IllegalArgumentException(
          "a study has a group, yet there were " + groups + " groups of " + studies + " studies");
    }
  }

  /** As many studies, each with one group. */
  public static SeriesCount of(int series) {
    return new SeriesCount(series, series);
  }

  /** Whether there are several groups and one study has them all: no two centres stand there. */
  public boolean ofOneStudy() {
    return groups > 1 && studies == 1;
  }

  /** "13 series", or "15 groups of 13 studies" where a study has several. */
  public String words() {
    return groups == studies
        ? say("figure.series", Map.of("series", groups))
        : say("figure.groups-of-studies", Map.of("groups", groups, "studies", studies));
  }
}
