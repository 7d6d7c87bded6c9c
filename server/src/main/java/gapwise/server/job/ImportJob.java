package gapwise.server.job;

import gapwise.table.TableFile;
import java.nio.file.Path;
import java.util.List;

/**
 * One import.
 *
 * @param id name of the job in addresses
 * @param files what was given
 * @param folder where the files lie until the job is settled
 * @param who who imports
 * @param state how far it has come
 */
public record ImportJob(
    String id, List<TableFile> files, Path folder, String who, ImportState state) {
  public ImportJob {
    files = List.copyOf(files);
  }

  ImportJob in(ImportState next) {
    return new ImportJob(id, files, folder, who, next);
  }

  /** The names of the files as the person knows them. */
  public String names() {
    return String.join(", ", files.stream().map(TableFile::name).toList());
  }
}
