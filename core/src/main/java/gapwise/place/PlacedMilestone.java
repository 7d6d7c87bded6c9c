package gapwise.place;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.selection.Selection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * One milestone of the case on one clock, held against the series that count from the same moment.
 *
 * @param reached the milestone
 * @param methods own method first, then the others in the order of the vocabulary; empty where no
 *     series can stand beside the case
 * @param notes what must be known, such as series on other clocks
 * @param selection the rows, and what was left out and why
 * @param plans what was asked of the analysis, the plan over all lengths first
 * @param dataVersion hash of the data; empty where nothing was pooled
 */
public record PlacedMilestone(
    Reached reached,
    List<MethodPlace> methods,
    List<String> notes,
    Selection selection,
    List<ObjectNode> plans,
    Optional<String> dataVersion) {
  public PlacedMilestone {
    Objects.requireNonNull(reached, "reached");
    methods = List.copyOf(methods);
    notes = List.copyOf(notes);
    Objects.requireNonNull(selection, "selection");
    plans = plans.stream().map(ObjectNode::deepCopy).toList();
    Objects.requireNonNull(dataVersion, "dataVersion");
  }
}
