package gapwise.reference.format;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The numbers of records that databases reported, held against what the files hold. */
final class CountCheck {
  private CountCheck() {}

  static List<String> of(List<SearchDone> searches, List<FileAnswer> files) {
    List<String> told = new ArrayList<>();
    for (SearchDone search : searches) {
      Optional<String> name = search.file();
      if (name.isEmpty()) {
        told.add(
            "The search of "
                + search.database()
                + " names no file; its number of records was not checked.");
        continue;
      }
      Optional<FileAnswer> file =
          files.stream().filter(answer -> answer.name().equals(name.get())).findFirst();
      if (file.isEmpty()) {
        told.add(
            "The search of "
                + search.database()
                + " names the file "
                + name.get()
                + ", which was not read.");
      } else {
        count(search, file.get()).ifPresent(told::add);
      }
    }
    for (FileAnswer file : files) {
      if (searches.stream()
          .noneMatch(search -> search.file().filter(file.name()::equals).isPresent())) {
        told.add("The file " + file.name() + " is of no search in the log; add the search.");
      }
    }
    return List.copyOf(told);
  }

  private static Optional<String> count(SearchDone search, FileAnswer file) {
    if (search.count().isEmpty()) {
      return Optional.of(
          "The log does not say how many records "
              + search.database()
              + " reported, so that "
              + file.name()
              + " was not checked.");
    }
    int reported = search.count().getAsInt();
    if (reported == file.records()) {
      return Optional.empty();
    }
    int apart = Math.abs(reported - file.records());
    return Optional.of(
        String.format(
            Locale.ROOT,
            "%s reported %,d records, %,d %s than the file %s holds (%,d, of which %,d were"
                + " refused). Export the search again, or correct the log.",
            search.database(),
            reported,
            apart,
            reported > file.records() ? "more" : "fewer",
            file.name(),
            file.records(),
            file.refused()));
  }
}
