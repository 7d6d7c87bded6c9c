package gapwise.figure.page;

import static gapwise.sentence.Sentences.say;

import java.util.Map;
import java.util.Optional;

/**
 * Which of how many pages a drawing is; of a single one nothing is said.
 *
 * @param page from 1
 * @param pages 1 or more
 */
public record PageNumber(int page, int pages) {
  /** Whether there are others. */
  public boolean ofMany() {
    return pages > 1;
  }

  /** The title of a figure, on this page. */
  public String title(String figure) {
    return ofMany()
        ? say("figure.title-of-page", Map.of("title", figure, "page", page, "pages", pages))
        : figure;
  }

  /** The page as a phrase of the line under the figure; empty for a single one. */
  public Optional<String> words() {
    return ofMany()
        ? Optional.of(say("figure.page", Map.of("page", page, "pages", pages)))
        : Optional.empty();
  }

  /** The same on a screen, where a sheet stands alone and must tell where all series are. */
  public Optional<String> wordsAmong(int series) {
    return ofMany()
        ? Optional.of(
            say(
                "figure.sheet",
                Map.of("page", page, "pages", pages, "series", Integer.toString(series))))
        : Optional.empty();
  }
}
