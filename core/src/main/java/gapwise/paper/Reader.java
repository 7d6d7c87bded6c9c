package gapwise.paper;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicReference;

/**
 * One process that reads papers, as its server sees it. It is asked one thing at a time, by whoever
 * holds it ({@link Readers}). A process that ends, however it ends, ends what it was asked and
 * nothing else.
 */
public final class Reader {
  /** So many files a process keeps open, which hold some megabytes each. */
  public static final int MOST_OPEN = 3;

  /**
   * A page within the caps fits with the pictures that it holds; a file that needs more ends its
   * process.
   */
  private static final String MOST_MEMORY = "-Xmx512m";

  /**
   * The compiler that thinks longer costs two cores more than it gives for work of a second: pages
   * came in half the time without it (measured with three papers on a busy machine of two cores).
   */
  private static final String QUICK_COMPILER = "-XX:TieredStopAtLevel=1";

  /** How the Java machine ends where memory does not suffice. */
  private static final int OUT_OF_MEMORY = 3;

  /** What a process is given of the surroundings of its server: nothing that could be secret. */
  private static final Set<String> SURROUNDINGS = Set.of("PATH", "SystemRoot", "LANG", "LC_ALL");

  private final Process process;
  private final OwnFolder folder;
  private final DataOutputStream out;
  private final Set<Long> papers = new LinkedHashSet<>();
  private final CompletableFuture<Answer> greeting = new CompletableFuture<>();
  private final AtomicReference<Optional<CompletableFuture<Answer>>> waiting =
      new AtomicReference<>(Optional.of(greeting));
  private volatile boolean killed;

  /** What came of asking: a reply with what travels beside it, or the end of the process. */
  sealed interface Answer permits Said, Ended {}

  record Said(Reply reply, Frame frame) implements Answer {}

  /**
   * The process ended before it answered.
   *
   * @param forMemory whether for want of memory
   */
  record Ended(boolean forMemory) implements Answer {}

  private Reader(Process process, OwnFolder folder) {
    this.process = process;
    this.folder = folder;
    this.out = new DataOutputStream(new BufferedOutputStream(process.getOutputStream()));
  }

  /**
   * Starts a process of this program.
   *
   * @param main the class whose main method answers
   * @throws IOException where the machine starts none
   */
  static Reader start(String main) throws IOException {
    OwnFolder folder = OwnFolder.make();
    List<String> command = new ArrayList<>();
    command.add(java());
    command.addAll(List.of(MOST_MEMORY, "-XX:+UseSerialGC", "-XX:+ExitOnOutOfMemoryError"));
    command.addAll(List.of("-XX:-UsePerfData", QUICK_COMPILER, "-Djava.awt.headless=true"));
    // What the machine says of its own end must not stand among answers, or it is ended as garbled.
    command.add("-XX:+DisplayVMOutputToStderr");
    command.addAll(folder.options());
    command.addAll(List.of("-cp", System.getProperty("java.class.path", ""), main));
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().keySet().retainAll(SURROUNDINGS);
    builder.redirectError(ProcessBuilder.Redirect.DISCARD);
    try {
      Reader reader = new Reader(builder.start(), folder);
      Thread listening = new Thread(reader::listen, "paper answers");
      listening.setDaemon(true);
      listening.start();
      return reader;
    } catch (IOException unstarted) {
      folder.delete();
      throw unstarted;
    }
  }

  private static String java() {
    Path own = Path.of(System.getProperty("java.home", ""), "bin", "java");
    return Files.isExecutable(own)
        ? own.toString()
        : ProcessHandle.current().info().command().orElse("java");
  }

  /** Whether it can be asked. */
  boolean isAlive() {
    return !killed && process.isAlive();
  }

  /** Done when it has started and can be asked, or has ended instead. */
  CompletableFuture<Answer> greeting() {
    return greeting;
  }

  /** Its temporary files. */
  OwnFolder folder() {
    return folder;
  }

  /** Whether it has a file open. */
  boolean holds(long paper) {
    synchronized (papers) {
      return papers.contains(paper);
    }
  }

  private void note(Ask ask) {
    synchronized (papers) {
      papers.remove(ask.paper());
      if (ask.what() != Ask.What.CLOSE) {
        papers.add(ask.paper());
      }
      while (papers.size() > MOST_OPEN) {
        papers.remove(papers.iterator().next());
      }
    }
  }

  /**
   * Asks one thing once it has started; whoever asks holds this process until the answer is there.
   */
  CompletableFuture<Answer> ask(Ask ask) {
    return greeting.thenCompose(
        first -> first instanceof Ended ? CompletableFuture.completedFuture(first) : put(ask));
  }

  private CompletableFuture<Answer> put(Ask ask) {
    CompletableFuture<Answer> answer = new CompletableFuture<>();
    waiting.set(Optional.of(answer));
    note(ask);
    send(ask);
    if (!process.isAlive()) {
      ended();
    }
    return answer;
  }

  private void send(Ask ask) {
    try {
      synchronized (out) {
        ask.frame().write(out);
      }
    } catch (IOException gone) {
      kill();
    }
  }

  /** Asks it to end what it is at. */
  void stop() {
    send(Ask.of(Ask.What.STOP, 0));
  }

  /** Ends it at once. */
  void kill() {
    killed = true;
    process.destroyForcibly();
  }

  /** Stops speaking to it, as when this program ends. */
  void leave() throws IOException {
    out.close();
  }

  /** Done when the process has ended. */
  CompletableFuture<Void> end() {
    return process.onExit().thenRun(() -> {});
  }

  private void listen() {
    try (DataInputStream in =
        new DataInputStream(new BufferedInputStream(process.getInputStream()))) {
      Optional<Frame> frame = Frame.read(in);
      while (frame.isPresent()) {
        answer(new Said(Reply.read(frame.get()), frame.get()));
        frame = Frame.read(in);
      }
    } catch (IOException | RuntimeException garbled) {
      // What it says is no answer, so that nothing it says later can be trusted.
      kill();
    }
    process.onExit().thenRun(this::ended);
  }

  private void ended() {
    folder.delete();
    answer(new Ended(!process.isAlive() && process.exitValue() == OUT_OF_MEMORY));
  }

  private void answer(Answer answer) {
    waiting.getAndSet(Optional.empty()).ifPresent(one -> one.complete(answer));
  }
}
