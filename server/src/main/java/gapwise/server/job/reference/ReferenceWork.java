package gapwise.server.job.reference;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.Citation;
import gapwise.problem.WrongInputException;
import gapwise.reference.format.ReferenceFile;
import gapwise.reference.format.SearchDone;
import gapwise.reference.format.SearchLog;
import gapwise.reference.kept.LoadedFile;
import gapwise.reference.pair.ReferenceProposals;
import gapwise.server.admission.FullDisk;
import gapwise.server.job.reference.ReferencesFound.LogHeld;
import gapwise.store.StoreUnusableException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What one load asks for.
 *
 * @param files files of references
 * @param log the log of searches, where one was handed in
 * @param folder where files go that can be taken
 */
record ReferenceWork(List<ReferenceFile> files, Optional<ReferenceFile> log, Path folder) {
  private static final Logger LOG = LoggerFactory.getLogger(ReferenceWork.class);

  ReferenceWork {
    files = List.copyOf(files);
  }

  /**
   * Does it, in the thread that asks.
   *
   * @param base asked for the citations of the evidence base by the id of their study
   * @param progress told how far it has come
   * @return how it ended
   */
  ReferenceState done(Supplier<Map<String, Citation>> base, Consumer<ReferenceState> progress) {
    try {
      progress.accept(new ReferenceState.Reading(0));
      return found(base.get(), progress);
    } catch (StoreUnusableException failure) {
      LOG.error("a load of references failed: {}", failure.getMessage());
      return new ReferenceState.Failed(
          say("references.no-base", Map.of("reason", failure.problem().message())));
    } catch (IOException | UncheckedIOException failure) {
      LOG.error("a load of references failed", failure);
      return new ReferenceState.Failed(
          FullDisk.causes(failure) ? FullDisk.WORDS : say("references.broke-off"));
    } catch (CancellationException stopped) {
      return new ReferenceState.Failed(say("references.broke-off"));
    } catch (RuntimeException failure) {
      LOG.error("a load of references failed", failure);
      return new ReferenceState.Failed(say("references.broke-off"));
    }
  }

  private ReferenceState.Done found(Map<String, Citation> base, Consumer<ReferenceState> progress)
      throws IOException {
    List<HandedFile> handed = new ArrayList<>();
    for (ReferenceFile file : files) {
      handed.add(HandedFile.of(file));
    }
    ReferenceProposals proposals;
    try (Exports exports = new Exports(folder, handed, progress)) {
      proposals = ReferenceProposals.of(files, base, exports);
    }
    Exports.proposals(proposals, folder);
    List<SearchDone> searches = new ArrayList<>();
    Optional<LogHeld> held =
        log.isPresent() ? Optional.of(held(log.get(), proposals, searches)) : Optional.empty();
    List<LoadedFile> loaded = new ArrayList<>();
    for (int at = 0; at < handed.size(); at++) {
      handed.get(at).loaded(proposals.files().get(at)).ifPresent(loaded::add);
    }
    return new ReferenceState.Done(
        Findings.of(proposals, base, held), new Waiting(loaded, searches));
  }

  /** A log that cannot be read is told, and keeps nobody from the rest. */
  private static LogHeld held(
      ReferenceFile log, ReferenceProposals proposals, List<SearchDone> read) throws IOException {
    try {
      List<SearchDone> searches = SearchLog.read(log);
      read.addAll(searches);
      return new LogHeld(
          searches.size(), SearchDone.heldAgainst(searches, proposals.files()), List.of());
    } catch (WrongInputException wrong) {
      return new LogHeld(0, List.of(), wrong.problems());
    }
  }
}
