package gapwise.server.home;

import gapwise.evidence.Reading;
import gapwise.paper.Opened;
import gapwise.paper.Opening;
import gapwise.paper.Paper;
import gapwise.paper.Refused;
import gapwise.store.OwnerOnly;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The papers that people read at the desk, as PDF files in one folder of the home. They are named
 * by their content, never exported, and may be removed; what was read of them stays in the records.
 * Safe for use by many threads.
 */
public final class Papers implements AutoCloseable {
  /** Each open file holds some megabytes; more people than this rarely read at once. */
  private static final int MOST_OPEN = 6;

  private final Path folder;
  private final Map<String, Paper> open = new LinkedHashMap<>(MOST_OPEN, 0.75f, true);

  Papers(Path folder) {
    this.folder = folder;
  }

  /** What came of a file that was handed in. */
  public sealed interface Kept {
    /**
     * It is kept.
     *
     * @param id its name
     */
    record As(String id) implements Kept {}

    /**
     * It cannot be read, and nothing was kept.
     *
     * @param refused why
     */
    record Not(Refused refused) implements Kept {}
  }

  /** Keeps a file where it can be read as a paper. */
  public Kept keep(InputStream content) {
    try {
      OwnerOnly.folders(folder);
      OwnerOnly.tighten(folder);
      Path arriving = Files.createTempFile(folder, "arriving", ".pdf");
      try {
        String id = written(content, arriving);
        Opening opening = Paper.open(arriving);
        if (opening instanceof Opened opened) {
          opened.paper().close();
          Files.move(arriving, file(id), StandardCopyOption.REPLACE_EXISTING);
          return new Kept.As(id);
        }
        return new Kept.Not((Refused) opening);
      } finally {
        Files.deleteIfExists(arriving);
      }
    } catch (IOException unwritten) {
      throw new UncheckedIOException("a paper could not be kept", unwritten);
    }
  }

  private static String written(InputStream content, Path file) throws IOException {
    MessageDigest digest = sha256();
    try (DigestOutputStream out = new DigestOutputStream(Files.newOutputStream(file), digest)) {
      content.transferTo(out);
    }
    return HexFormat.of().formatHex(digest.digest()).substring(0, Reading.PAPER_LETTERS);
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  private Path file(String id) {
    return folder.resolve(id + ".pdf");
  }

  /** Whether a file of this name is kept. */
  public boolean has(String id) {
    return Reading.isPaper(id) && Files.isRegularFile(file(id));
  }

  /**
   * A paper that is kept, open; not to be closed by whoever asks. Empty where none of this name is
   * kept.
   */
  public Optional<Opening> open(String id) {
    if (!has(id)) {
      return Optional.empty();
    }
    synchronized (open) {
      Paper known = open.get(id);
      if (known != null) {
        return Optional.of(new Opened(known));
      }
    }
    Opening opening = Paper.open(file(id));
    if (opening instanceof Opened opened) {
      return Optional.of(new Opened(remembered(id, opened.paper())));
    }
    return Optional.of(opening);
  }

  private Paper remembered(String id, Paper fresh) {
    synchronized (open) {
      Paper before = open.putIfAbsent(id, fresh);
      if (before != null) {
        fresh.close();
        return before;
      }
      Iterator<Paper> oldest = open.values().iterator();
      while (open.size() > MOST_OPEN) {
        oldest.next().close();
        oldest.remove();
      }
      return fresh;
    }
  }

  /** Removes a file; whether there was one. */
  public boolean remove(String id) {
    if (!has(id)) {
      return false;
    }
    synchronized (open) {
      Paper known = open.remove(id);
      if (known != null) {
        known.close();
      }
    }
    try {
      return Files.deleteIfExists(file(id));
    } catch (IOException undeleted) {
      throw new UncheckedIOException("a paper could not be removed", undeleted);
    }
  }

  @Override
  public void close() {
    synchronized (open) {
      open.values().forEach(Paper::close);
      open.clear();
    }
  }
}
