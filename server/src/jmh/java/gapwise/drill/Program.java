package gapwise.drill;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** One process of the built program, which is ended by its own handle alone. */
final class Program implements AutoCloseable {
  private static final Duration START = Duration.ofSeconds(90);
  private static final long PAUSE_MILLISECONDS = 20;

  private final Process process;
  /** As G1 and the serial collector tell it, the whole heap first. */
  private static final Pattern USED = Pattern.compile("used (\\d+)K");

  private final Path said;

  private Program(Process process, Path said) {
    this.process = process;
    this.said = said;
  }

  /** Starts a command of the jar; what it says goes to a file in the folder. */
  static Program start(Path jar, Path folder, List<String> words) throws IOException {
    Path said = Files.createTempFile(folder, "said", ".txt");
    List<String> command =
        new ArrayList<>(
            List.of("java", "-Xmx1g", "-XX:TieredStopAtLevel=1", "-jar", jar.toString()));
    command.addAll(words);
    return new Program(
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(said.toFile()).start(),
        said);
  }

  /** Waits until a server answers; false when it ended before or did not in a minute and a half. */
  boolean answers(HttpClient client, int port) throws InterruptedException {
    long end = System.nanoTime() + START.toNanos();
    while (System.nanoTime() < end && process.isAlive()) {
      try {
        HttpRequest request =
            HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/api/v1/vocabularies"))
                .timeout(Duration.ofSeconds(5))
                .build();
        if (client.send(request, HttpResponse.BodyHandlers.discarding()).statusCode() == 200) {
          return true;
        }
      } catch (IOException notYet) {
        Thread.sleep(PAUSE_MILLISECONDS);
      }
    }
    return false;
  }

  boolean isRunning() {
    return process.isAlive();
  }

  /** Ends the process at once, as a lack of power or the system would. */
  void kill() throws InterruptedException {
    process.destroyForcibly().waitFor();
  }

  /** Waits for the end and gives the exit code. */
  int exitCode() throws InterruptedException {
    return process.waitFor();
  }

  /** Memory of the process that lies in the machine's memory, as Linux tells; 0 elsewhere. */
  long memoryMegabytes() throws IOException {
    Path status = Path.of("/proc/" + process.pid() + "/status");
    if (!Files.exists(status)) {
      return 0;
    }
    return Files.readAllLines(status).stream()
        .filter(line -> line.startsWith("VmRSS:"))
        .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024)
        .findFirst()
        .orElse(0);
  }

  /** What the heap holds once it is cleaned up. */
  long liveHeapMegabytes() throws IOException, InterruptedException {
    diagnosed("GC.run");
    Matcher used = USED.matcher(diagnosed("GC.heap_info"));
    if (!used.find()) {
      throw new IllegalStateException("the heap of the program is not told");
    }
    return Long.parseLong(used.group(1)) / 1024;
  }

  private String diagnosed(String command) throws IOException, InterruptedException {
    Path tool = Path.of(System.getProperty("java.home"), "bin", "jcmd");
    Process asked =
        new ProcessBuilder(tool.toString(), Long.toString(process.pid()), command)
            .redirectErrorStream(true)
            .start();
    String told = new String(asked.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    asked.waitFor();
    return told;
  }

  String said() throws IOException {
    return Files.readString(said);
  }

  @Override
  public void close() throws IOException {
    process.destroyForcibly();
    Files.deleteIfExists(said);
  }
}
