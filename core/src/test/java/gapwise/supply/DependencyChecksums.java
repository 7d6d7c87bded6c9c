package gapwise.supply;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Compares the local Maven repository with a list of SHA-256 checksums, one line a file in the form
 * of {@code sha256sum}, with paths as they stand in the repository. The list names every jar and
 * every project description (pom) that a build into an empty repository fetches: dependencies,
 * plugins, compiler plugins and the formatter.
 *
 * <p>Maven runs this straight from its source before anything is compiled, so it uses nothing but
 * the JDK. {@code check} fails when a listed file has other content, or when something on the class
 * path is not listed; a listed file that is not there yet is no fault. {@code write} lists what is
 * there, and refuses to give a version already listed another checksum, since what was released
 * does not change.
 */
public final class DependencyChecksums {
  private static final String OURS = "gapwise/";

  private final Path list;
  private final Path repository;

  DependencyChecksums(Path list, Path repository) {
    this.list = list;
    this.repository = repository.toAbsolutePath().normalize();
  }

  /**
   * @param arguments {@code check LIST REPOSITORY PROJECT CLASSPATH} or {@code write LIST
   *     REPOSITORY}
   */
  public static void main(String[] arguments) throws IOException {
    DependencyChecksums checksums =
        new DependencyChecksums(Path.of(arguments[1]), Path.of(arguments[2]));
    List<String> faults =
        arguments[0].equals("write")
            ? checksums.write()
            : checksums.check(Path.of(arguments[3]), arguments[4]);
    if (!faults.isEmpty()) {
      print(faults, System.err);
      System.exit(1);
    }
  }

  private static void print(List<String> faults, PrintStream out) {
    out.println("The local Maven repository is not what this project was written with:");
    faults.forEach(fault -> out.println("  " + fault));
    out.println(
        "Delete the folder of a changed version, so that it is fetched anew. After changing a"
            + " version on purpose, write the list anew: DEVELOPERS.md, \"Change a dependency\".");
  }

  /**
   * What is not as listed, in words; empty if nothing is.
   *
   * @param project folder of the project, whose own classes are not listed
   * @param classPath what the build is about to use
   */
  List<String> check(Path project, String classPath) throws IOException {
    SortedMap<String, String> listed = listed();
    List<String> faults = new ArrayList<>();
    for (String entry : classPath.split(File.pathSeparator)) {
      Path used = Path.of(entry).toAbsolutePath().normalize();
      if (!used.startsWith(repository)) {
        if (!used.startsWith(project.toAbsolutePath().normalize())) {
          faults.add(used + ": neither from the local repository nor of this project");
        }
        continue;
      }
      String path = pathInRepository(used);
      if (!path.startsWith(OURS) && !listed.containsKey(path)) {
        faults.add(named(path) + ": not in the list of checksums");
      }
    }
    listed.entrySet().parallelStream()
        .filter(entry -> Files.exists(repository.resolve(entry.getKey())))
        .map(entry -> changed(entry.getKey(), entry.getValue(), hash(entry.getKey())))
        .flatMap(List::stream)
        .forEachOrdered(faults::add);
    return faults;
  }

  /** Writes the list anew; what was refused, in words, with the list then left as it was. */
  List<String> write() throws IOException {
    SortedMap<String, String> found = found();
    SortedMap<String, String> before = Files.exists(list) ? listed() : new TreeMap<>();
    List<String> faults = new ArrayList<>();
    found.forEach(
        (path, hash) -> faults.addAll(changed(path, before.getOrDefault(path, hash), hash)));
    if (faults.isEmpty()) {
      Files.write(
          list,
          found.entrySet().stream()
              .map(entry -> entry.getValue() + "  " + entry.getKey())
              .toList());
    }
    return faults;
  }

  private static List<String> changed(String path, String expected, String found) {
    return expected.equals(found)
        ? List.of()
        : List.of(named(path) + ": changed; expected SHA-256 " + expected + ", found " + found);
  }

  private SortedMap<String, String> listed() throws IOException {
    SortedMap<String, String> listed = new TreeMap<>();
    for (String line : Files.readAllLines(list)) {
      String[] parts = line.split(" {2}", 2);
      listed.put(parts[1], parts[0]);
    }
    return listed;
  }

  private SortedMap<String, String> found() throws IOException {
    try (Stream<Path> files = Files.walk(repository)) {
      return files
          .map(this::pathInRepository)
          .filter(path -> path.endsWith(".jar") || path.endsWith(".pom"))
          .filter(path -> !path.startsWith(OURS))
          .collect(Collectors.toMap(path -> path, this::hash, (one, other) -> one, TreeMap::new));
    }
  }

  private String pathInRepository(Path file) {
    return repository.relativize(file).toString().replace(File.separatorChar, '/');
  }

  /** "org.slf4j:slf4j-api:2.0.20 (slf4j-api-2.0.20.jar)" from its path. */
  private static String named(String path) {
    String[] folders = path.split("/");
    int last = folders.length - 1;
    String group = String.join(".", List.of(folders).subList(0, Math.max(0, last - 2)));
    return group
        + ":"
        + folders[Math.max(0, last - 2)]
        + ":"
        + folders[Math.max(0, last - 1)]
        + " ("
        + folders[last]
        + ")";
  }

  private String hash(String path) {
    try (InputStream in = Files.newInputStream(repository.resolve(path))) {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      new DigestInputStream(in, digest).transferTo(OutputStream.nullOutputStream());
      return HexFormat.of().formatHex(digest.digest());
    } catch (IOException e) {
      throw new UncheckedIOException(repository.resolve(path) + " cannot be read", e);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every JDK has SHA-256", e);
    }
  }
}
