package gapwise.server.page.studies;

import gapwise.evidence.vocabulary.Outcome;
import gapwise.server.address.PagePaths;
import gapwise.server.address.Paging;
import gapwise.server.page.Site;
import gapwise.server.page.part.FilterForm;
import gapwise.server.page.part.OutcomeChoice;
import gapwise.server.page.part.QuestionParts;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the list of studies shows.
 *
 * @param site the frame of the page
 * @param form the filters
 * @param found how much was found, in words
 * @param columns columns to choose from
 * @param plain address of the page with nothing narrowed
 * @param aside joining words that were typed and say nothing alone; may be empty
 * @param notSaid further groups of which it is not said whether they have the length asked for,
 *     counted apart, with the addresses that list them
 * @param didYouMean another spelling with its address
 * @param list what was found
 */
public record StudiesView(
    Site site,
    FilterForm form,
    String found,
    List<Choice> columns,
    String plain,
    String aside,
    List<FilterForm.On> notSaid,
    Optional<FilterForm.On> didYouMean,
    Found list) {
  public StudiesView {
    notSaid = List.copyOf(notSaid);
  }

  /** The outcomes of the family that is asked for, one of which can be taken alone. */
  public List<OutcomeChoice> outcomes() {
    return OutcomeChoice.several(PagePaths.STUDIES, form);
  }

  /** What is asked beside the filters: it goes along to results and narrows no list. */
  public List<FilterForm.On> held() {
    return QuestionParts.held(PagePaths.STUDIES, form.address());
  }

  /** An order of lines, or a column, as the page offers it. */
  public record Choice(String code, String label, boolean chosen) {}

  /** What was found. */
  public sealed interface Found {}

  /**
   * Nothing fits.
   *
   * @param wider what taking one filter off would leave, with its address
   */
  public record Nothing(List<FilterForm.On> wider) implements Found {
    public Nothing {
      wider = List.copyOf(wider);
    }
  }

  /**
   * Groups that fit.
   *
   * @param arms number of groups found
   * @param rows the groups of this page, at least one
   * @param flags what kept references say became of the paper of a study, by its id
   * @param paging where this page lies
   * @param sortings orders to choose from
   * @param pool address of the pooled result of what was found
   * @param csv address of all that was found as a table of values
   * @param workbook address of the records found as a workbook
   */
  public record Groups(
      int arms,
      List<ArmRow> rows,
      Map<String, String> flags,
      Paging paging,
      List<Choice> sortings,
      String pool,
      String csv,
      String workbook)
      implements Found {
    public Groups {
      rows = List.copyOf(rows);
      flags = Map.copyOf(flags);
      sortings = List.copyOf(sortings);
    }

    /**
     * The groups of this page by study, a study where its first group stands, since what one paper
     * reports of several groups is read together.
     */
    public List<List<ArmRow>> byStudy() {
      Map<String, List<ArmRow>> studies = new LinkedHashMap<>();
      rows.forEach(
          row -> studies.computeIfAbsent(row.study(), study -> new ArrayList<>()).add(row));
      return List.copyOf(studies.values());
    }

    /** The outcome whose values a column shows; empty where none does. */
    public Optional<Outcome> outcome() {
      return columns().stream()
          .map(ArmRow.Cell::head)
          .flatMap(head -> Outcome.vocabulary().all().stream().filter(o -> o.label().equals(head)))
          .findFirst();
    }

    /** The columns as the rows have them. */
    public List<ArmRow.Cell> columns() {
      return rows.get(0).cells();
    }
  }
}
