package gapwise.server.testing.filled;

import gapwise.server.testing.RunningServer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;

/**
 * Two servers with much on their pages, started once for all classes of a run that ask: one without
 * accounts over the demonstration base, one with accounts over {@link LongStudies}.
 */
public final class FilledServer implements BeforeAllCallback {
  /** As long as the name of a person may be. */
  private static final String LONG_NAME = "Konradin Kestermere Lavenhythe Hollinbeck";

  private static final int LONGEST_NAME = 40;
  private Started started;

  @Override
  public void beforeAll(ExtensionContext context) {
    started =
        context
            .getRoot()
            .getStore(Namespace.create(FilledServer.class))
            .getOrComputeIfAbsent("filled", key -> Started.now(), Started.class);
  }

  /** Every page with much on it. */
  public List<FilledState> states() {
    return started.states();
  }

  /** Both servers, filled. */
  public record Started(
      RunningServer open, RunningServer team, Path folder, List<FilledState> states)
      implements AutoCloseable {
    /** Starts and fills them. */
    public static Started now() {
      try {
        Path folder = Files.createTempDirectory("gapwise-filled");
        String longName = LONG_NAME.substring(0, LONGEST_NAME).strip();
        RunningServer open = RunningServer.withDemonstration(folder.resolve("open"));
        Filling first = new Filling(open, folder);
        FilledReferences.into(first);
        FilledScreening.into(first, longName);
        FilledReview.into(first, longName);
        FilledExtraction.into(first, longName);
        FilledDesk.into(first);
        FilledImport.into(first);
        FilledKept.into(first);
        FilledSheet.into(first);
        RunningServer team = RunningServer.with(folder.resolve("team"), LongStudies.all());
        Filling second = new Filling(team, folder);
        FilledAgreement.into(second);
        String session = FilledPeople.into(second, longName);
        FilledAgreement.shown(second, session);
        LongStudies.shown(second, session);
        return new Started(
            open,
            team,
            folder,
            Stream.concat(first.states().stream(), second.states().stream()).toList());
      } catch (Exception failure) {
        throw new IllegalStateException("pages could not be filled", failure);
      }
    }

    @Override
    public void close() throws IOException {
      open.close();
      team.close();
      try (Stream<Path> all = Files.walk(folder)) {
        List<Path> deepestFirst = all.sorted(Comparator.reverseOrder()).toList();
        for (Path path : deepestFirst) {
          Files.delete(path);
        }
      }
    }
  }
}
