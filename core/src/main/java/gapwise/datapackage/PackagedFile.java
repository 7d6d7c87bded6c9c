package gapwise.datapackage;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Objects;
import java.util.regex.Pattern;

/**
 * One file of a package, as its descriptor tells it.
 *
 * @param name its name as a resource
 * @param path where it lies in the package, parts apart by a slash
 * @param bytes its size
 * @param sha256 SHA-256 (FIPS 180-4) of its bytes, 64 hexadecimal digits in lower case
 * @param description all that the descriptor says of it
 */
public record PackagedFile(
    String name, String path, long bytes, String sha256, ObjectNode description) {
  /** The way in which the standard writes which hash it is. */
  static final String ALGORITHM = "sha256:";

  /** A name, as the standard asks for it. */
  private static final Pattern NAME = Pattern.compile("[a-z0-9._-]{1,200}");

  /** Narrower than the standard: no part begins with a dot, so none leads out of the folder. */
  private static final Pattern PATH =
      Pattern.compile("[A-Za-z0-9_][A-Za-z0-9._-]{0,99}(/[A-Za-z0-9_][A-Za-z0-9._-]{0,99}){0,4}");

  private static final Pattern SHA256 = Pattern.compile("[0-9a-f]{64}");

  public PackagedFile {
    Objects.requireNonNull(description, "description");
    if (!isName(name) || !isPath(path) || bytes < 0 || !isSha256(sha256)) {
      throw new IllegalArgumentException(
          "not a file of a package: " + name + ", " + path + ", " + bytes + ", " + sha256);
    }
    description = description.deepCopy();
  }

  @Override
  public ObjectNode description() {
    return description.deepCopy();
  }

  static boolean isName(String text) {
    return NAME.matcher(text).matches();
  }

  static boolean isPath(String text) {
    return PATH.matcher(text).matches();
  }

  static boolean isSha256(String text) {
    return SHA256.matcher(text).matches();
  }
}
