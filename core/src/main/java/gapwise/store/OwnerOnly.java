package gapwise.store;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.Objects;
import java.util.Set;

/**
 * Files and folders that nobody but their owner can read. They have these permissions from the
 * moment they exist, not a moment later. Where the file system knows no such permissions, those of
 * the folder around them hold.
 */
public final class OwnerOnly {
  private static final Set<PosixFilePermission> OWNERS =
      EnumSet.of(
          PosixFilePermission.OWNER_READ,
          PosixFilePermission.OWNER_WRITE,
          PosixFilePermission.OWNER_EXECUTE);
  private static final boolean POSIX =
      FileSystems.getDefault().supportedFileAttributeViews().contains("posix");
  private static final FileAttribute<?>[] FOLDER = permissions("rwx------");
  private static final FileAttribute<?>[] FILE = permissions("rw-------");

  private OwnerOnly() {}

  private static FileAttribute<?>[] permissions(String words) {
    return POSIX
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(words))
        }
        : new FileAttribute<?>[0];
  }

  /** The folder that a file lies in, or would lie in. */
  static Path folderOf(Path file) {
    return Objects.requireNonNull(
        file.toAbsolutePath().getParent(), () -> file + " can be no file");
  }

  /** Makes a folder and those above it where they are not there; a link to a folder is one. */
  public static Path folders(Path folder) throws IOException {
    return Files.isDirectory(folder) ? folder : Files.createDirectories(folder, FOLDER);
  }

  /**
   * A new file to write into.
   *
   * @throws FileAlreadyExistsException when there is one of that name
   */
  public static OutputStream newFile(Path file) throws IOException {
    return Channels.newOutputStream(
        open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE));
  }

  /** Makes an empty file; one that is there is left as it is. */
  public static void fileIfAbsent(Path file) throws IOException {
    try {
      Files.createFile(file, FILE);
    } catch (FileAlreadyExistsException there) {
      // It was made before, or by someone else a moment ago: either will do.
      return;
    }
  }

  /** Opens a file; where it is made by that, it is its owner's alone. */
  static FileChannel open(Path file, OpenOption... options) throws IOException {
    return FileChannel.open(file, Set.of(options), FILE);
  }

  /** Whether others than the owner may read, write or list it; a link stands for what it names. */
  static boolean isOpenToOthers(Path path) throws IOException {
    return POSIX && !OWNERS.containsAll(Files.getPosixFilePermissions(path));
  }

  /** Takes from others what they may do; what the owner may do stays as it is. */
  public static void tighten(Path path) throws IOException {
    if (isOpenToOthers(path)) {
      Set<PosixFilePermission> kept = EnumSet.copyOf(OWNERS);
      kept.retainAll(Files.getPosixFilePermissions(path));
      Files.setPosixFilePermissions(path, kept);
    }
  }
}
