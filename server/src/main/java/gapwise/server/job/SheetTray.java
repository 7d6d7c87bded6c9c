package gapwise.server.job;

import gapwise.store.OwnerOnly;
import gapwise.table.TableFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * Sheets that somebody is looking at and has not accepted: they lie in the folder of uploads until
 * newer ones push them out or the server stops. Safe for use by many threads.
 */
public final class SheetTray {
  /** As many people look at sheets at once as a team has. */
  private static final int MOST_SHEETS = 20;

  private final Path folder;
  private final Map<String, Lying> lying = new LinkedHashMap<>();

  private record Lying(Path path, TableFile file) {}

  /**
   * @param folder where uploads lie, as {@link UploadFolder} makes it
   */
  public SheetTray(Path folder) {
    this.folder = folder;
  }

  /**
   * Lays a file on the tray.
   *
   * @return the name under which it is found
   */
  public String lay(String name, InputStream content) throws IOException {
    String id = UUID.randomUUID().toString();
    Path path = folder.resolve("sheet-" + id);
    try (OutputStream target = OwnerOnly.newFile(path)) {
      content.transferTo(target);
    }
    synchronized (lying) {
      lying.put(id, new Lying(path, new TableFile(name, () -> Files.newInputStream(path))));
      for (String oldest : List.copyOf(lying.keySet())) {
        if (lying.size() > MOST_SHEETS) {
          take(oldest);
        }
      }
    }
    return id;
  }

  /** The file of this name, if it still lies there. */
  public Optional<TableFile> find(String id) {
    synchronized (lying) {
      return Optional.ofNullable(lying.get(id)).map(Lying::file);
    }
  }

  /** Takes a file off the tray. */
  public void take(String id) {
    synchronized (lying) {
      Optional.ofNullable(lying.remove(id)).map(Lying::path).ifPresent(UploadFolder::delete);
    }
  }
}
