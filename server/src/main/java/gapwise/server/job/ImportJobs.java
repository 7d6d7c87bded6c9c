package gapwise.server.job;

import static gapwise.sentence.Sentences.say;

import gapwise.curation.EvidenceBase;
import gapwise.curation.ImportInDoubtException;
import gapwise.intake.Intake;
import gapwise.intake.Taken;
import gapwise.server.admission.BusyException;
import gapwise.server.admission.FullDisk;
import gapwise.store.OwnerOnly;
import gapwise.store.StoreUnusableException;
import gapwise.table.TableFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Imports one after another in the background. Nothing is stored unless all of an import is right,
 * every doubt is acknowledged and every change of what stands there is agreed to. The latest jobs
 * are remembered until the server stops. Safe for use by many threads.
 */
public final class ImportJobs implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(ImportJobs.class);

  /** Jobs remembered; uploads of older ones are deleted. */
  private static final int MOST_JOBS = 50;

  /** Bytes of all uploads that lie on the disk: eight of the largest. */
  private static final long MOST_BYTES = 1L << 30;

  private static final int SECONDS_UNTIL_ROOM = 60;

  private final Intake intake;
  private final Path folder;
  private final long mostBytes;
  private final Map<String, ImportJob> jobs = new LinkedHashMap<>();

  /** Bytes that lie on the disk for a job, by its id. */
  private final Map<String, Long> lying = new HashMap<>();

  private final ExecutorService worker =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "import");
            thread.setDaemon(true);
            return thread;
          });

  /**
   * @param folder where uploads lie while they are read, as {@link UploadFolder} makes it
   */
  public ImportJobs(EvidenceBase base, Path folder) {
    this(base, folder, MOST_BYTES);
  }

  /**
   * @param folder where uploads lie while they are read
   * @param mostBytes of all uploads that lie there; the oldest that waits for a person goes first
   */
  ImportJobs(EvidenceBase base, Path folder, long mostBytes) {
    this.intake = new Intake(base);
    this.folder = folder;
    this.mostBytes = mostBytes;
  }

  /** A file as it comes in, with its size in bytes. */
  public record Upload(String name, long size, InputStream content) {}

  /**
   * Takes files in and starts to read them.
   *
   * @throws BusyException when there is no room for them, on the disk or beside other uploads
   */
  public ImportJob start(List<Upload> uploads, String who, ImportJob.Agreed agreed)
      throws IOException {
    String id = UUID.randomUUID().toString();
    Path own = folder.resolve(id);
    makeRoom(id, uploads.stream().mapToLong(Upload::size).sum());
    List<TableFile> files;
    try {
      files = kept(uploads, OwnerOnly.folders(own));
    } catch (IOException | RuntimeException unkept) {
      forget(id, own);
      if (FullDisk.causes(unkept)) {
        throw new BusyException(FullDisk.SECONDS, FullDisk.WORDS);
      }
      throw unkept;
    }
    ImportJob job = new ImportJob(id, files, own, who, agreed, new ImportState.Reading(0));
    remember(job);
    worker.execute(() -> run(job));
    return job;
  }

  private static List<TableFile> kept(List<Upload> uploads, Path own) throws IOException {
    List<TableFile> files = new ArrayList<>();
    for (Upload upload : uploads) {
      Path kept = own.resolve(files.size() + ".upload");
      try (OutputStream target = OwnerOnly.newFile(kept)) {
        upload.content().transferTo(target);
      }
      files.add(new TableFile(upload.name(), () -> Files.newInputStream(kept)));
    }
    return files;
  }

  /** Takes room for an upload, from those that have waited longest for a person. */
  private void makeRoom(String id, long bytes) {
    synchronized (jobs) {
      for (ImportJob job : List.copyOf(jobs.values())) {
        if (lyingWith(bytes) > mostBytes
            && job.state().isSettled()
            && lying.containsKey(job.id())) {
          jobs.remove(job.id());
          forget(job.id(), job.folder());
        }
      }
      if (lyingWith(bytes) > mostBytes) {
        throw new BusyException(
            SECONDS_UNTIL_ROOM,
            "Other uploads are being read and fill the room there is for uploads. Nothing was taken"
                + " of yours; try again in a minute.");
      }
      lying.put(id, bytes);
    }
  }

  private long lyingWith(long bytes) {
    return bytes + lying.values().stream().mapToLong(Long::longValue).sum();
  }

  private void forget(String id, Path files) {
    synchronized (jobs) {
      lying.remove(id);
    }
    UploadFolder.delete(files);
  }

  /**
   * Starts an import that waits for a person again, with what they agreed to now and before; empty
   * where there is none.
   */
  public Optional<ImportJob> agree(String id, ImportJob.Agreed more) {
    ImportJob again;
    synchronized (jobs) {
      ImportJob job = jobs.get(id);
      if (job == null || !(job.state() instanceof ImportState.Asking)) {
        return Optional.empty();
      }
      again = job.agreeing(more).in(new ImportState.Reading(0));
      jobs.put(id, again);
    }
    worker.execute(() -> run(again));
    return Optional.of(again);
  }

  /** The job of this name. */
  public Optional<ImportJob> find(String id) {
    synchronized (jobs) {
      return Optional.ofNullable(jobs.get(id));
    }
  }

  private void run(ImportJob job) {
    ImportState state;
    try (ChangesFound changes = new ChangesFound(Optional.of(job.changes()))) {
      state =
          state(
              intake.take(
                  job.files(),
                  job.agreed().agreement(),
                  new Intake.As(job.who(), say("import.why", Map.of("files", job.names()))),
                  rows -> set(job.in(new ImportState.Reading(rows))),
                  changes),
              changes);
    } catch (StoreUnusableException failure) {
      LOG.error("import of {} failed: {}", job.names(), failure.getMessage());
      state =
          new ImportState.Failed(
              say("import.nothing-stored-because", Map.of("reason", failure.problem().message())));
    } catch (ImportInDoubtException failure) {
      LOG.error("import of {} is in doubt", job.names(), failure);
      state = new ImportState.Failed(failure.words());
    } catch (IOException | RuntimeException failure) {
      LOG.error("import of {} failed", job.names(), failure);
      state = new ImportState.Failed(say("import.broke-off"));
    }
    set(job.in(state));
    if (!(state instanceof ImportState.Asking)) {
      forget(job.id(), job.folder());
    }
  }

  private static ImportState state(Taken taken, ChangesFound changes) {
    if (taken instanceof Taken.Wrong wrong) {
      return new ImportState.Wrong(wrong.problems(), wrong.doubts());
    }
    if (taken instanceof Taken.Asks asks) {
      return new ImportState.Asking(asks.open(), changes.open(), asks.compared());
    }
    if (taken instanceof Taken.Overtaken) {
      return new ImportState.Failed(say("import.overtaken"));
    }
    Taken.Stored stored = (Taken.Stored) taken;
    return new ImportState.Done(stored.record(), stored.compared(), stored.kinds());
  }

  private void remember(ImportJob job) {
    synchronized (jobs) {
      jobs.put(job.id(), job);
      Set<String> ids = new HashSet<>(jobs.keySet());
      for (String id : List.copyOf(jobs.keySet())) {
        ImportJob old = jobs.get(id);
        if (old != null && ids.size() > MOST_JOBS && old.state().isSettled()) {
          jobs.remove(id);
          forget(id, old.folder());
          ids.remove(id);
        }
      }
    }
  }

  private void set(ImportJob job) {
    synchronized (jobs) {
      jobs.put(job.id(), job);
    }
  }

  /** Takes no more jobs; what is under way stores all or nothing. */
  @Override
  public void close() {
    worker.shutdown();
    try {
      if (!worker.awaitTermination(30, TimeUnit.SECONDS)) {
        LOG.warn("an import was still under way when the server stopped");
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
    synchronized (jobs) {
      jobs.values().stream()
          .filter(job -> Files.exists(job.folder()))
          .forEach(job -> forget(job.id(), job.folder()));
    }
  }
}
