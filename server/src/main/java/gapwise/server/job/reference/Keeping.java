package gapwise.server.job.reference;

import static gapwise.sentence.Sentences.say;

import gapwise.curation.ReferenceBase;
import gapwise.reference.format.SearchDone;
import gapwise.reference.kept.LoadedFile;
import gapwise.reference.kept.Spool;
import gapwise.server.admission.FullDisk;
import gapwise.store.StoreUnusableException;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps what a person accepts.
 *
 * @param base where it is kept
 */
record Keeping(ReferenceBase base) {
  private static final Logger LOG = LoggerFactory.getLogger(Keeping.class);

  /** What a load can give; empty where there is nothing, or it is kept already. */
  static Optional<Waiting> waiting(ReferenceState state) {
    if (state instanceof ReferenceState.Done done) {
      return Optional.of(done.waiting()).filter(waiting -> !waiting.files().isEmpty());
    }
    return state instanceof ReferenceState.NotKept failed
        ? Optional.of(failed.waiting())
        : Optional.empty();
  }

  /** Keeps all of a load or nothing. */
  ReferenceState keep(
      ReferencesFound found, Waiting waiting, Path spool, List<SearchDone> searches, String who) {
    String names = waiting.files().stream().map(LoadedFile::file).collect(Collectors.joining(", "));
    try (BufferedReader lines = Files.newBufferedReader(spool, StandardCharsets.UTF_8)) {
      return new ReferenceState.Kept(
          found,
          base.keep(Spool.read(lines), waiting.files(), searches, who, "references of " + names));
    } catch (StoreUnusableException failure) {
      LOG.error("a load of references could not be kept: {}", failure.getMessage());
      return new ReferenceState.NotKept(
          found,
          waiting,
          say("references.not-kept-store", Map.of("reason", failure.problem().message())));
    } catch (IOException | RuntimeException failure) {
      LOG.error("a load of references could not be kept", failure);
      return new ReferenceState.NotKept(
          found, waiting, FullDisk.causes(failure) ? FullDisk.WORDS : say("references.not-kept"));
    }
  }
}
