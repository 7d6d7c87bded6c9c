package gapwise.datapackage;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;

/**
 * Writes a package, file by file, and last its descriptor with size and SHA-256 of each. The same
 * files give the same bytes: nothing says when or where it was written. What was not finished is
 * deleted when it is closed.
 */
public final class PackageWriter implements Closeable {
  /** The descriptor, by the standard. */
  public static final String DESCRIPTOR = "datapackage.json";

  private static final String ARCHIVE = ".zip";
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  private final Destination destination;
  private final List<ObjectNode> resources = new ArrayList<>();
  private final Set<String> names = new HashSet<>();
  private final Set<String> paths = new HashSet<>();

  private PackageWriter(Destination destination) {
    this.destination = destination;
  }

  /** Writes the content of one file; the stream stays open. */
  @FunctionalInterface
  public interface Content {
    /** Writes all of it. */
    void write(OutputStream target) throws IOException;
  }

  /**
   * Begins a package.
   *
   * @param target an archive where the name ends in .zip, else a folder
   * @throws FileAlreadyExistsException when there is one: nothing is written over
   */
  public static PackageWriter into(Path target) throws IOException {
    return new PackageWriter(
        isArchive(target) ? new ZipDestination(target) : new FolderDestination(target));
  }

  /** Whether a name is that of an archive. */
  public static boolean isArchive(Path target) {
    Path name = Objects.requireNonNullElse(target.getFileName(), target);
    return name.toString().toLowerCase(Locale.ROOT).endsWith(ARCHIVE);
  }

  /**
   * Writes one file.
   *
   * @param resource what the descriptor says of it, with its name and path; size and hash are added
   */
  public void add(ObjectNode resource, Content content) throws IOException {
    String name = resource.path("name").asText();
    String path = resource.path("path").asText();
    if (!PackagedFile.isName(name) || !PackagedFile.isPath(path)) {
      throw new IllegalArgumentException("no name or path of a file: " + name + ", " + path);
    }
    if (!names.add(name) || !paths.add(path.toLowerCase(Locale.ROOT)) || path.equals(DESCRIPTOR)) {
      throw new IllegalArgumentException("two files are called " + name + " or " + path);
    }
    ObjectNode described = resource.deepCopy();
    try (OutputStream target = destination.next(path);
        CountedOutput counted = new CountedOutput(target)) {
      content.write(counted);
      described.put("bytes", counted.count());
      described.put("hash", PackagedFile.ALGORITHM + counted.sha256());
    }
    resources.add(described);
  }

  /** Writes one file of text in UTF-8. */
  public void addText(ObjectNode resource, String text) throws IOException {
    add(resource, target -> target.write(text.getBytes(StandardCharsets.UTF_8)));
  }

  /**
   * Writes the descriptor and gives the whole its name.
   *
   * @param head what it says of the package as a whole, with its name
   */
  public void finish(ObjectNode head) throws IOException {
    ObjectNode root = head.deepCopy();
    root.putArray("resources").addAll(resources);
    try (OutputStream target = destination.next(DESCRIPTOR)) {
      target.write(text(root).getBytes(StandardCharsets.UTF_8));
    }
    destination.finish();
  }

  /** JSON in lines, the same on every machine. */
  public static String text(ObjectNode json) {
    DefaultIndenter lines = DefaultIndenter.SYSTEM_LINEFEED_INSTANCE.withLinefeed("\n");
    DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
    printer.indentArraysWith(lines);
    printer.indentObjectsWith(lines);
    try {
      return MAPPER.writer(printer).writeValueAsString(json) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a tree of JSON can always be written", e);
    }
  }

  @Override
  public void close() throws IOException {
    destination.close();
  }
}
