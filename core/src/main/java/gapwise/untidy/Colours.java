package gapwise.untidy;

import gapwise.printed.Doubt;
import gapwise.printed.Proposed;
import gapwise.printed.Wanted;
import java.util.List;
import java.util.Optional;

/** Colours of a patient's cells: asked where a legend explains them, else nothing. */
record Colours(Legend legend, Fields out) {

  /** A colour that a legend explains asks whether it holds; by itself it is nothing. */
  void of(List<GridCell> cells, FoundField.Whose whose) {
    for (GridCell cell : cells) {
      Optional<String> meaning = cell.fill().flatMap(legend::ofColour);
      if (meaning.isEmpty()) {
        continue;
      }
      Heading heading = Heading.of(List.of(meaning.get()));
      Optional<Wanted> wanted =
          Targets.wanted(heading, true, false)
              .filter(w -> w.into().equals("patients") && w.kind() == Wanted.Kind.ANSWER);
      String why =
          "The cell has the colour that the legend explains as '"
              + meaning.get()
              + "'. Say whether it holds for this patient.";
      wanted.ifPresent(
          w ->
              out.add(
                  "patients",
                  whose,
                  Identity.Taken.own(cell),
                  List.of(Proposed.asked(w.base(), "yes", Optional.empty(), Doubt.REMARK, why))));
    }
  }
}
