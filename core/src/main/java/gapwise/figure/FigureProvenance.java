package gapwise.figure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Where the numbers of a figure come from; printed at its foot and kept in its metadata.
 *
 * @param studies number of series that entered
 * @param participants the people or limbs in words, such as "187 limbs"
 * @param model model and interval in words
 * @param dataVersion version of program and data, such as a change number or hash
 * @param dataDate date to which the data stand; empty where unknown
 * @param demonstration whether the data are invented; the figure then says so in large
 * @param references the studies that are shown; none where rows of a table were
 */
public record FigureProvenance(
    int studies,
    String participants,
    String model,
    String dataVersion,
    Optional<LocalDate> dataDate,
    boolean demonstration,
    List<Reference> references) {
  /** What a figure of invented data says of itself. */
  public static final String INVENTED =
      "Invented demonstration data. Not about real patients or papers.";

  public FigureProvenance {
    if (studies < 0) {
      throw new IllegalArgumentException("studies must be 0 or more, was " + studies);
    }
    Objects.requireNonNull(participants, "participants");
    Objects.requireNonNull(model, "model");
    Objects.requireNonNull(dataVersion, "dataVersion");
    Objects.requireNonNull(dataDate, "dataDate");
    references = List.copyOf(references);
  }

  /** Numbers whose studies have no reference. */
  public FigureProvenance(
      int studies,
      String participants,
      String model,
      String dataVersion,
      Optional<LocalDate> dataDate,
      boolean demonstration) {
    this(studies, participants, model, dataVersion, dataDate, demonstration, List.of());
  }

  /** The same with the studies that are shown. */
  public FigureProvenance citing(List<Reference> shown) {
    return new FigureProvenance(
        studies, participants, model, dataVersion, dataDate, demonstration, shown);
  }

  /** The foot as short phrases in order; nothing is said of what is empty. */
  public List<String> phrases() {
    List<String> phrases = new ArrayList<>();
    phrases.add(studies + " series" + (participants.isBlank() ? "" : ", " + participants));
    if (!model.isBlank()) {
      phrases.add("Model: " + model);
    }
    if (!dataVersion.isBlank()) {
      phrases.add("Data version: " + dataVersion);
    }
    dataDate.ifPresent(date -> phrases.add("Data of " + date));
    return List.copyOf(phrases);
  }
}
