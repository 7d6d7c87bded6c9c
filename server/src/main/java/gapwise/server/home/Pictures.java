package gapwise.server.home;

import gapwise.evidence.Reading;
import gapwise.paper.PagePicture;
import gapwise.paper.Picture;
import gapwise.paper.PictureFile;
import gapwise.paper.Refused;
import gapwise.store.OwnerOnly;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;

/**
 * Pictures of figures that people handed in by themselves, as PNG files in one folder of the home.
 * They hold pixels alone, are named by their content, never exported, and may be removed; what was
 * read of them stays in the records. Safe for use by many threads.
 */
public final class Pictures {
  private final Path folder;

  Pictures(Path folder) {
    this.folder = folder;
  }

  /** What came of a picture that was handed in. */
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

  /** Keeps the pixels of a PNG or JPEG file. */
  public Kept keep(InputStream content) {
    try {
      OwnerOnly.folders(folder);
      OwnerOnly.tighten(folder);
      Path arriving = Files.createTempFile(folder, "arriving", ".part");
      try {
        // One byte more than is read is enough to be refused as too large.
        Files.write(arriving, content.readNBytes((int) PictureFile.MOST_BYTES + 1));
        PagePicture read = PictureFile.read(arriving);
        if (read instanceof Refused refused) {
          return new Kept.Not(refused);
        }
        byte[] png = bytes((Picture) read);
        String id =
            HexFormat.of().formatHex(sha256().digest(png)).substring(0, Reading.PAPER_LETTERS);
        Files.write(arriving, png);
        Files.move(arriving, file(id), StandardCopyOption.REPLACE_EXISTING);
        return new Kept.As(id);
      } finally {
        Files.deleteIfExists(arriving);
      }
    } catch (IOException unwritten) {
      throw new UncheckedIOException("a picture could not be kept", unwritten);
    }
  }

  private static byte[] bytes(Picture picture) throws IOException {
    try (InputStream png = picture.png()) {
      return png.readAllBytes();
    }
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  private Path file(String id) {
    return folder.resolve(id + ".png");
  }

  /** Whether a picture of this name is kept. */
  public boolean has(String id) {
    return Reading.isPaper(id) && Files.isRegularFile(file(id));
  }

  /** A picture that is kept; empty where none of this name is, or its file was damaged since. */
  public Optional<Picture> open(String id) {
    if (!has(id)) {
      return Optional.empty();
    }
    try {
      return Optional.of(PictureFile.kept(file(id)));
    } catch (IOException damaged) {
      return Optional.empty();
    }
  }

  /** Removes a picture; whether there was one. */
  public boolean remove(String id) {
    try {
      return has(id) && Files.deleteIfExists(file(id));
    } catch (IOException undeleted) {
      throw new UncheckedIOException("a picture could not be removed", undeleted);
    }
  }
}
