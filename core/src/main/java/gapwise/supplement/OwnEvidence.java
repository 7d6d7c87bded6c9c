package gapwise.supplement;

import gapwise.answer.Answers;
import gapwise.cohort.CohortDecision;
import gapwise.cohort.CohortLinks;
import gapwise.curation.EvidenceBase;
import gapwise.curation.StudiesAt;
import gapwise.evidence.Study;
import gapwise.search.MemoryIndex;
import gapwise.search.SearchSnapshot;
import gapwise.selection.Selector;
import gapwise.store.DocumentStore;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The studies of a supplement as an evidence base of their own, for as long as plans are run on
 * them. It lies in a folder of temporary files that nobody else can read, and goes when it is
 * closed.
 */
final class OwnEvidence implements AutoCloseable {
  private final Path folder;
  private final DocumentStore store;
  private final SearchSnapshot search;
  private final Selector selector;

  private OwnEvidence(Path folder, DocumentStore store, SearchSnapshot search, Selector selector) {
    this.folder = folder;
    this.store = store;
    this.search = search;
    this.selector = selector;
  }

  /**
   * Puts it together.
   *
   * @param decisions what persons settled of shared patients
   */
  static OwnEvidence of(List<Study> studies, List<CohortDecision> decisions) throws IOException {
    Path folder = Files.createTempDirectory("gapwise-supplement");
    try {
      DocumentStore store = DocumentStore.open(folder, Clock.systemUTC());
      try {
        new EvidenceBase(store).saveAll(studies.iterator(), "supplement", "run again", List.of());
        StudiesAt kept = StudiesAt.of(store, store.lastChange());
        SearchSnapshot search = MemoryIndex.of(studies::forEach, kept.change());
        Selector selector = new Selector(search, kept, CohortLinks.of(decisions));
        return new OwnEvidence(folder, store, search, selector);
      } catch (RuntimeException failure) {
        store.close();
        throw failure;
      }
    } catch (RuntimeException failure) {
      delete(folder);
      throw failure;
    }
  }

  /** Runs a plan on these studies. */
  Answers.Ran run(Asking asking, String plan, Optional<Path> tables) {
    return new Answers(question -> asking.taken(selector.select(question))).run(plan, tables);
  }

  static void delete(Path folder) throws IOException {
    List<Path> all;
    try (Stream<Path> walked = Files.walk(folder)) {
      all = walked.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path one : all) {
      Files.deleteIfExists(one);
    }
  }

  @Override
  public void close() {
    search.release();
    store.close();
    try {
      delete(folder);
    } catch (IOException undeleted) {
      throw new UncheckedIOException("temporary files could not be deleted", undeleted);
    }
  }
}
