package gapwise.server.job.reference;

import gapwise.reference.format.SearchDone;
import gapwise.reference.kept.LoadedFile;
import java.util.List;

/**
 * What of a load waits to be kept.
 *
 * @param files the files of which records were read
 * @param searches the searches of the log that was handed in; empty where there was none
 */
public record Waiting(List<LoadedFile> files, List<SearchDone> searches) {
  public Waiting {
    files = List.copyOf(files);
    searches = List.copyOf(searches);
  }
}
