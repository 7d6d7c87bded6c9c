package gapwise.datapackage;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * A package, open to be read. Bytes that are not those of its descriptor are never given out to
 * their end. What is wrong comes out as {@link WrongInputException}, by file.
 */
public final class PackageReader implements Closeable {
  /** Of a descriptor; ours have some hundred thousand. */
  private static final int MOST_DESCRIPTOR_BYTES = 16_000_000;

  private static final int BYTES_AT_A_TIME = 65_536;

  private final Container container;
  private final Descriptor descriptor;

  private PackageReader(Container container, Descriptor descriptor) {
    this.container = container;
    this.descriptor = descriptor;
  }

  /**
   * Opens a package and reads its descriptor.
   *
   * @param path a folder with the descriptor, or an archive (ZIP) of it
   */
  public static PackageReader open(Path path) {
    Container container = container(path);
    try {
      return new PackageReader(container, Descriptor.read(descriptor(container, path)));
    } catch (IOException unread) {
      throw closed(container, unreadable(path.toString()));
    } catch (RuntimeException wrong) {
      throw closed(container, wrong);
    }
  }

  private static Container container(Path path) {
    try {
      if (Files.isDirectory(path)) {
        return new FolderContainer(path);
      }
      return new ZipContainer(path);
    } catch (IOException unread) {
      throw new WrongInputException(
          List.of(
              new Problem(
                  path.toString(),
                  "no-package",
                  "This can be read neither as a folder nor as an archive (ZIP) in which each file is"
                      + " once. Name a folder or archive that holds "
                      + PackageWriter.DESCRIPTOR
                      + ".")));
    }
  }

  private static byte[] descriptor(Container container, Path path) throws IOException {
    Optional<InputStream> found = container.open(PackageWriter.DESCRIPTOR);
    if (found.isEmpty()) {
      throw wrong(
          path.toString(),
          "no-descriptor",
          "There is no "
              + PackageWriter.DESCRIPTOR
              + " in it, which names the files of a package. Name the folder in which it lies, or"
              + " get the package again.");
    }
    try (InputStream in = found.get()) {
      byte[] bytes = in.readNBytes(MOST_DESCRIPTOR_BYTES + 1);
      if (bytes.length > MOST_DESCRIPTOR_BYTES) {
        throw wrong(
            PackageWriter.DESCRIPTOR,
            "descriptor-too-long",
            "It is longer than "
                + MOST_DESCRIPTOR_BYTES
                + " bytes, which no package of this program is.");
      }
      return bytes;
    }
  }

  /** What the descriptor says of the package as a whole. */
  public ObjectNode head() {
    return descriptor.head();
  }

  /** Its files in the order of the descriptor. */
  public List<PackagedFile> files() {
    return descriptor.files();
  }

  /** The file at a path, if the descriptor names one. */
  public Optional<PackagedFile> file(String path) {
    return files().stream().filter(file -> file.path().equals(path)).findFirst();
  }

  /**
   * Reads every file to its end and holds it against size and checksum.
   *
   * @throws WrongInputException naming every file that is missing or another
   */
  public void check() {
    Problems problems = new Problems();
    byte[] some = new byte[BYTES_AT_A_TIME];
    for (PackagedFile file : files()) {
      try (InputStream in = read(file)) {
        while (in.read(some) >= 0) {
          // Read to its end, where it is held against its checksum.
          continue;
        }
      } catch (WrongInputException wrong) {
        problems.addAll(wrong.problems());
      } catch (IOException unread) {
        problems.addAll(unreadable(file.path()).problems());
      }
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
  }

  /**
   * The bytes of a file. At their end they are held against size and checksum.
   *
   * @throws WrongInputException when there is no such file
   */
  public InputStream read(PackagedFile file) throws IOException {
    return new CheckedInput(
        container
            .open(file.path())
            .orElseThrow(
                () ->
                    wrong(
                        file.path(),
                        "file-missing",
                        "The descriptor names this file, and it is not there. Get the whole package"
                            + " again.")),
        file);
  }

  private static WrongInputException unreadable(String where) {
    return wrong(
        where,
        "unreadable-file",
        "It cannot be read to its end. The archive or the disk is damaged; get it again.");
  }

  private static WrongInputException wrong(String where, String code, String message) {
    return new WrongInputException(List.of(new Problem(where, code, message)));
  }

  private static RuntimeException closed(Container container, RuntimeException failure) {
    try {
      container.close();
    } catch (IOException unclosed) {
      failure.addSuppressed(unclosed);
    }
    return failure;
  }

  @Override
  public void close() throws IOException {
    container.close();
  }
}
