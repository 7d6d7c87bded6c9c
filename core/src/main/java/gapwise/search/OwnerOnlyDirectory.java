package gapwise.search;

import gapwise.store.OwnerOnly;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicLong;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.store.FSLockFactory;
import org.apache.lucene.store.IOContext;
import org.apache.lucene.store.IndexOutput;
import org.apache.lucene.store.MMapDirectory;
import org.apache.lucene.store.OutputStreamIndexOutput;

/** A folder of an index whose files its owner alone can read: they hold what the records hold. */
final class OwnerOnlyDirectory extends MMapDirectory {
  private static final int BUFFER_BYTES = 8192;

  private final AtomicLong temporaries = new AtomicLong();

  private OwnerOnlyDirectory(Path folder) throws IOException {
    super(folder, FSLockFactory.getDefault());
  }

  /** Opens the folder, making it where it is not there. */
  static OwnerOnlyDirectory of(Path folder) throws IOException {
    OwnerOnly.folders(folder);
    OwnerOnly.fileIfAbsent(folder.resolve(IndexWriter.WRITE_LOCK_NAME));
    return new OwnerOnlyDirectory(folder);
  }

  @Override
  public IndexOutput createOutput(String name, IOContext context) throws IOException {
    ensureOpen();
    return new OutputStreamIndexOutput(
        "OwnerOnlyDirectory(" + directory + ", " + name + ")",
        name,
        OwnerOnly.newFile(directory.resolve(name)),
        BUFFER_BYTES);
  }

  @Override
  public IndexOutput createTempOutput(String prefix, String suffix, IOContext context)
      throws IOException {
    String name = getTempFileName(prefix, suffix, temporaries.getAndIncrement());
    // An earlier run may have left a file of this name.
    while (Files.exists(directory.resolve(name))) {
      name = getTempFileName(prefix, suffix, temporaries.getAndIncrement());
    }
    return createOutput(name, context);
  }
}
