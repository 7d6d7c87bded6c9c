package gapwise.datapackage;

import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * What a descriptor says.
 *
 * @param head of the package as a whole, without its files
 * @param files in their order
 */
record Descriptor(ObjectNode head, List<PackagedFile> files) {
  /** More than a supplement of every question has. */
  private static final int MOST_FILES = 20_000;

  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  Descriptor {
    head = head.deepCopy();
    files = List.copyOf(files);
  }

  @Override
  public ObjectNode head() {
    return head.deepCopy();
  }

  static Descriptor read(byte[] json) {
    JsonNode root;
    try {
      root = MAPPER.readTree(json);
    } catch (IOException unread) {
      throw wrong("It is not JSON that ends where it should.");
    }
    if (!(root instanceof ObjectNode head) || !head.path("resources").isArray()) {
      throw wrong("It names no files in a list called resources.");
    }
    if (head.path("resources").size() > MOST_FILES) {
      throw wrong("It names more than " + MOST_FILES + " files.");
    }
    Problems problems = new Problems();
    List<PackagedFile> files = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (JsonNode resource : head.path("resources")) {
      String name = resource.path("name").asText();
      String path = resource.path("path").asText();
      String hash = resource.path("hash").asText();
      String sha256 =
          hash.startsWith(PackagedFile.ALGORITHM)
              ? hash.substring(PackagedFile.ALGORITHM.length()).toLowerCase(Locale.ROOT)
              : "";
      long bytes = resource.path("bytes").canConvertToLong() ? resource.path("bytes").asLong() : -1;
      boolean right =
          resource.isObject()
              && PackagedFile.isName(name)
              && PackagedFile.isPath(path)
              && PackagedFile.isSha256(sha256)
              && bytes >= 0;
      if (!right) {
        problems.add(
            DESCRIBED + (files.size() + problems.size() + 1),
            "no-file-of-a-package",
            "Found name '"
                + name
                + "', path '"
                + path
                + "', bytes "
                + resource.path("bytes")
                + ", hash '"
                + hash
                + "'. Expected a name and a path in letters, digits, dots and dashes that stays in"
                + " the package, a size, and a hash such as sha256: with 64 digits.");
      } else if (!seen.add(path.toLowerCase(Locale.ROOT))) {
        problems.add(path, "file-twice", "The descriptor names this file twice.");
      } else {
        files.add(new PackagedFile(name, path, bytes, sha256, (ObjectNode) resource));
      }
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    ObjectNode rest = head.deepCopy();
    rest.remove("resources");
    return new Descriptor(rest, files);
  }

  private static final String DESCRIBED = PackageWriter.DESCRIPTOR + ", resource ";

  private static WrongInputException wrong(String found) {
    return new WrongInputException(
        List.of(
            new Problem(
                PackageWriter.DESCRIPTOR,
                "no-descriptor",
                found + " Get the package again, or write it anew.")));
  }
}
