package gapwise.server.job.reference;

import static gapwise.sentence.Sentences.say;

import gapwise.curation.ReferenceBase;
import gapwise.evidence.Citation;
import gapwise.reference.format.ReferenceFile;
import gapwise.reference.format.SearchDone;
import gapwise.server.admission.BusyException;
import gapwise.server.admission.FullDisk;
import gapwise.server.job.ImportJobs.Upload;
import gapwise.server.job.UploadFolder;
import gapwise.store.OwnerOnly;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Loads of references, read and compared one after another in the background. Uploads are deleted
 * as soon as they are read; what was found is kept for the latest loads until the server stops.
 * Safe for use by many threads.
 */
public final class ReferenceJobs implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(ReferenceJobs.class);

  /** Loads remembered, those that wait among them; a review has a few. */
  private static final int MOST_JOBS = 20;

  /**
   * Bytes on the disk, of uploads and of what was written of them, beyond which the oldest go; the
   * largest upload, and as much again for each of its three copies.
   */
  private static final long MOST_BYTES = 4L << 27;

  private static final int SECONDS_UNTIL_ROOM = 60;
  private static final int SECONDS_TO_END = 5;

  private final Supplier<Map<String, Citation>> base;
  private final Keeping keeping;
  private final Path folder;
  private final Map<String, ReferenceJob> jobs = new LinkedHashMap<>();

  /** Bytes that lie on the disk for a job, by its id. */
  private final Map<String, Long> lying = new LinkedHashMap<>();

  private volatile boolean stopped;

  private final ExecutorService worker =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "references");
            thread.setDaemon(true);
            return thread;
          });

  /**
   * @param base asked for the citations of the evidence base by the id of their study
   * @param keeping keeps what a person accepts
   * @param folder where uploads lie while they are read, as {@link UploadFolder} makes it
   */
  public ReferenceJobs(Supplier<Map<String, Citation>> base, ReferenceBase keeping, Path folder) {
    this.base = base;
    this.keeping = new Keeping(keeping);
    this.folder = folder;
  }

  /**
   * Takes files in and starts to read them.
   *
   * @param log the log of searches, where there is one
   * @throws BusyException when there is no room for them, on the disk or beside other loads
   */
  public ReferenceJob start(List<Upload> uploads, Optional<Upload> log) throws IOException {
    String id = UUID.randomUUID().toString();
    Path own = folder.resolve(id);
    List<String> names = uploads.stream().map(Upload::name).toList();
    ReferenceJob job = new ReferenceJob(id, names, own, new ReferenceState.Reading(0));
    makeRoom(job, Stream.concat(uploads.stream(), log.stream()).mapToLong(Upload::size).sum());
    try {
      OwnerOnly.folders(own);
      List<ReferenceFile> files = new ArrayList<>();
      for (Upload upload : uploads) {
        files.add(kept(upload, own.resolve(files.size() + ".upload")));
      }
      Optional<ReferenceFile> searches =
          log.isPresent()
              ? Optional.of(kept(log.get(), own.resolve("search-log.upload")))
              : Optional.empty();
      ReferenceWork work = new ReferenceWork(files, searches, own);
      worker.execute(() -> run(job, work));
      return job;
    } catch (IOException | RuntimeException unkept) {
      forget(job);
      if (FullDisk.causes(unkept)) {
        throw new BusyException(FullDisk.SECONDS, FullDisk.WORDS);
      }
      throw unkept;
    }
  }

  private static ReferenceFile kept(Upload upload, Path file) throws IOException {
    try (OutputStream target = OwnerOnly.newFile(file)) {
      upload.content().transferTo(target);
    }
    return new ReferenceFile(upload.name(), () -> Files.newInputStream(file));
  }

  /** The job of this name. */
  public Optional<ReferenceJob> find(String id) {
    synchronized (jobs) {
      return Optional.ofNullable(jobs.get(id));
    }
  }

  /** Opens a file that was written of what was found; empty where there is none. */
  public Optional<InputStream> open(String id, ReferenceFileOut file) throws IOException {
    synchronized (jobs) {
      Optional<ReferenceJob> job = find(id).filter(one -> one.state().found().isPresent());
      return job.isPresent()
          ? Optional.of(Files.newInputStream(job.get().folder().resolve(file.file())))
          : Optional.empty();
    }
  }

  /**
   * Keeps what a load holds, in the background.
   *
   * @param searches the log of its searches
   * @param who the person who accepts it
   * @return whether it waited for that
   */
  public boolean keep(String id, List<SearchDone> searches, String who) {
    synchronized (jobs) {
      Optional<ReferenceJob> job = find(id);
      Optional<Waiting> waiting = job.flatMap(one -> Keeping.waiting(one.state()));
      if (job.isEmpty() || waiting.isEmpty()) {
        return false;
      }
      ReferencesFound found = job.get().state().found().orElseThrow();
      set(job.get().in(new ReferenceState.Keeping(found, waiting.get())));
      worker.execute(() -> keep(job.get(), found, waiting.get(), searches, who));
      return true;
    }
  }

  private void keep(
      ReferenceJob job,
      ReferencesFound found,
      Waiting waiting,
      List<SearchDone> searches,
      String who) {
    ReferenceState state = new ReferenceState.NotKept(found, waiting, say("references.not-kept"));
    try {
      Path spool = job.folder().resolve(Exports.WAITING);
      state = keeping.keep(found, waiting, spool, searches, who);
    } finally {
      // Also after an error that nothing is known of: no page waits for ever.
      set(job.in(state));
    }
  }

  private void run(ReferenceJob job, ReferenceWork work) {
    ReferenceState state = new ReferenceState.Failed(say("references.broke-off"));
    try {
      state = work.done(base, next -> goOn(job.in(next)));
    } finally {
      // Also after an error that nothing is known of: no page waits for ever.
      clearUp(job, state instanceof ReferenceState.Done);
      set(job.in(state));
    }
  }

  /**
   * Notes how far a job has come.
   *
   * @throws CancellationException when the server stops; an interrupt would close files of the
   *     store
   */
  private void goOn(ReferenceJob job) {
    if (stopped) {
      throw new CancellationException("the server stops");
    }
    set(job);
  }

  /** Deletes the uploads, and all else too where nothing was found. */
  private void clearUp(ReferenceJob job, boolean found) {
    long left = 0;
    if (found) {
      try (Stream<Path> files = Files.list(job.folder())) {
        for (Path file : files.toList()) {
          if (file.toString().endsWith(".upload")) {
            UploadFolder.delete(file);
          } else {
            left += Files.size(file);
          }
        }
      } catch (IOException unread) {
        LOG.warn("uploads in {} could not be deleted: {}", job.folder(), unread.getMessage());
      }
    } else if (Files.exists(job.folder())) {
      UploadFolder.delete(job.folder());
    }
    synchronized (jobs) {
      lying.put(job.id(), left);
    }
  }

  /** Remembers a job, and forgets the oldest settled ones where it would be too much. */
  private void makeRoom(ReferenceJob job, long bytes) {
    synchronized (jobs) {
      for (ReferenceJob old : List.copyOf(jobs.values())) {
        if (isFull(bytes) && old.state().isSettled()) {
          forget(old);
        }
      }
      if (isFull(bytes)) {
        throw new BusyException(SECONDS_UNTIL_ROOM, say("references.busy"));
      }
      jobs.put(job.id(), job);
      lying.put(job.id(), bytes);
    }
  }

  private boolean isFull(long bytes) {
    long all = bytes + lying.values().stream().mapToLong(Long::longValue).sum();
    return jobs.size() >= MOST_JOBS || all > MOST_BYTES;
  }

  private void forget(ReferenceJob job) {
    synchronized (jobs) {
      jobs.remove(job.id());
      lying.remove(job.id());
    }
    if (Files.exists(job.folder())) {
      UploadFolder.delete(job.folder());
    }
  }

  private void set(ReferenceJob job) {
    synchronized (jobs) {
      jobs.replace(job.id(), job);
    }
  }

  /** Takes no more jobs and deletes all that lies on the disk. */
  @Override
  public void close() {
    stopped = true;
    worker.shutdown();
    try {
      if (!worker.awaitTermination(SECONDS_TO_END, TimeUnit.SECONDS)) {
        LOG.warn("a load of references was still under way when the server stopped");
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
    synchronized (jobs) {
      List.copyOf(jobs.values()).forEach(this::forget);
    }
  }
}
