package gapwise.server.job.reference;

import java.nio.file.Path;
import java.util.List;

/**
 * One load of files of references.
 *
 * @param id name of the job in addresses
 * @param names names of the files as the person knows them
 * @param folder where the files lie while they are read, and afterwards what was written of them
 * @param state how far it has come
 */
public record ReferenceJob(String id, List<String> names, Path folder, ReferenceState state) {
  public ReferenceJob {
    names = List.copyOf(names);
  }

  ReferenceJob in(ReferenceState next) {
    return new ReferenceJob(id, names, folder, next);
  }
}
