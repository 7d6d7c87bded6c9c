package gapwise.figure;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.value.SeriesCount;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Where the numbers of a figure come from; printed at its foot and kept in its metadata.
 *
 * @param series how many groups entered, and of how many studies
 * @param participants the people or limbs in words, such as "187 limbs"
 * @param model model and interval in words
 * @param dataVersion version of program and data in words, such as a hash, or the day and number of
 *     a change
 * @param dataDate date to which the data stand, which their version says to people; empty where
 *     unknown
 * @param demonstration whether the data are invented; the figure then says so in large
 * @param references the studies that are shown; none where rows of a table were
 */
public record FigureProvenance(
    SeriesCount series,
    String participants,
    String model,
    String dataVersion,
    Optional<LocalDate> dataDate,
    boolean demonstration,
    List<Reference> references) {
  /** What a figure of invented data says of itself. */
  public static final String INVENTED = say("figure.invented");

  public FigureProvenance {
    Objects.requireNonNull(series, "series");
    Objects.requireNonNull(participants, "participants");
    Objects.requireNonNull(model, "model");
    Objects.requireNonNull(dataVersion, "dataVersion");
    Objects.requireNonNull(dataDate, "dataDate");
    references = List.copyOf(references);
  }

  /** Numbers whose studies have no reference. */
  public FigureProvenance(
      SeriesCount series,
      String participants,
      String model,
      String dataVersion,
      Optional<LocalDate> dataDate,
      boolean demonstration) {
    this(series, participants, model, dataVersion, dataDate, demonstration, List.of());
  }

  /** The same with the studies that are shown. */
  public FigureProvenance citing(List<Reference> shown) {
    return new FigureProvenance(
        series, participants, model, dataVersion, dataDate, demonstration, shown);
  }

  /** The data version as a phrase; empty where it is unknown. */
  public Optional<String> version() {
    return dataVersion.isBlank()
        ? Optional.empty()
        : Optional.of(say("figure.data-version", Map.of("version", dataVersion)));
  }

  /** The foot as short phrases in order; nothing is said of what is empty. */
  public List<String> phrases() {
    List<String> phrases = new ArrayList<>();
    if (!participants.isBlank()) {
      phrases.add(
          say("figure.series-of-people", Map.of("series", series.words(), "people", participants)));
    } else if (series.groups() > 0) {
      phrases.add(series.words());
    }
    if (!model.isBlank()) {
      phrases.add(say("figure.model", Map.of("model", model)));
    }
    version().ifPresent(phrases::add);
    return List.copyOf(phrases);
  }
}
