package gapwise.server.page.untidy;

import static gapwise.sentence.Sentences.say;

import gapwise.desk.Mappings;
import gapwise.evidence.unit.Unit;
import gapwise.printed.Statistic;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.server.job.PostedForm;
import gapwise.untidy.Mapping;
import gapwise.untidy.MappingTarget;
import gapwise.untidy.Preview;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What the columns of one table of a sheet hold, to be changed by a person.
 *
 * @param table its number within the sheet, from 0
 * @param kept whether what is shown was kept from before
 * @param columns some of its columns
 * @param before the number of the first column of those shown before these; empty for none
 * @param after the number of the first column of those after these; empty for none
 */
public record MappingForm(
    int table,
    boolean kept,
    List<Column> columns,
    Optional<Integer> before,
    Optional<Integer> after) {
  /** Columns on one page; each has a list of all that it may hold. */
  private static final int MOST_COLUMNS = 40;

  private static final String BETWEEN = "+";

  /** What the numbers of a column may be; what stands together is printed together in one cell. */
  private static final List<List<Statistic>> KINDS = kinds();

  public MappingForm {
    columns = List.copyOf(columns);
    Objects.requireNonNull(before, "before");
    Objects.requireNonNull(after, "after");
  }

  /**
   * One column.
   *
   * @param index its number within the table, from 0
   * @param heading its words as they stand in the file
   * @param target what it is taken to hold
   * @param numbers what its numbers are
   * @param unit of numbers that name none
   */
  public record Column(
      int index, String heading, Choice target, List<Choice> numbers, List<Choice> unit) {
    public Column {
      numbers = List.copyOf(numbers);
      unit = List.copyOf(unit);
    }
  }

  /** One of a list, as it is sent and as it reads. */
  public record Choice(String code, String label, boolean chosen) {}

  /** One heading of the list of what a column may hold. */
  public record Targets(String heading, List<MappingTarget> all) {
    public Targets {
      all = List.copyOf(all);
    }
  }

  /** The list of what a column may hold. */
  public static List<Targets> targets() {
    Map<String, List<MappingTarget>> byHeading =
        MappingTarget.all().stream()
            .collect(
                Collectors.groupingBy(
                    MappingTarget::heading, LinkedHashMap::new, Collectors.toList()));
    return byHeading.entrySet().stream()
        .map(one -> new Targets(one.getKey(), one.getValue()))
        .toList();
  }

  /**
   * The forms of all tables of a sheet.
   *
   * @param from the first column to show of a table with many
   */
  static List<MappingForm> of(Preview preview, Mappings known, int from) {
    List<Mapping> mappings = preview.mappings();
    List<MappingForm> forms = new ArrayList<>();
    for (int table = 0; table < mappings.size(); table++) {
      List<Mapping.Column> all = mappings.get(table).columns();
      int first = from < all.size() ? from - from % MOST_COLUMNS : 0;
      int end = Math.min(all.size(), first + MOST_COLUMNS);
      List<Column> columns = new ArrayList<>();
      for (int index = first; index < end; index++) {
        columns.add(column(index, preview.headings().get(table).get(index), all.get(index)));
      }
      if (!columns.isEmpty()) {
        forms.add(
            new MappingForm(
                table,
                known.isKept(mappings.get(table)),
                columns,
                first == 0 ? Optional.empty() : Optional.of(first - MOST_COLUMNS),
                end == all.size() ? Optional.empty() : Optional.of(end)));
      }
    }
    return forms;
  }

  private static Column column(int index, String heading, Mapping.Column column) {
    String target = column.target();
    String label = MappingTarget.find(target).map(MappingTarget::label).orElse(target);
    List<Choice> numbers =
        Stream.concat(Stream.of(column.statistics()), KINDS.stream())
            .distinct()
            .map(
                kind ->
                    new Choice(
                        code(kind),
                        kind.stream().map(Statistic::label).collect(Collectors.joining(" and ")),
                        kind.equals(column.statistics())))
            .toList();
    List<Choice> units =
        Stream.concat(
                Stream.of(new Choice("", "", column.unit().isEmpty())),
                Arrays.stream(Unit.values())
                    .map(
                        unit ->
                            new Choice(
                                unit.symbol(),
                                unit.symbol(),
                                column.unit().filter(unit::equals).isPresent())))
            .toList();
    return new Column(index, heading, new Choice(target, label, true), numbers, units);
  }

  private static List<List<Statistic>> kinds() {
    List<List<Statistic>> kinds = new ArrayList<>();
    kinds.add(List.of());
    Arrays.stream(Statistic.values()).map(List::of).forEach(kinds::add);
    kinds.add(List.of(Statistic.MEAN, Statistic.SD));
    kinds.add(List.of(Statistic.MEAN, Statistic.RANGE));
    kinds.add(List.of(Statistic.MEDIAN, Statistic.RANGE));
    kinds.add(List.of(Statistic.MEDIAN, Statistic.QUARTILES));
    kinds.add(List.of(Statistic.COUNT, Statistic.TOTAL));
    kinds.add(List.of(Statistic.COUNT, Statistic.PERCENT));
    return List.copyOf(kinds);
  }

  private static String code(List<Statistic> kind) {
    return kind.stream().map(Enum::name).collect(Collectors.joining(BETWEEN));
  }

  /**
   * A mapping as a form has it; columns that the form lacks stay.
   *
   * @throws WrongInputException where it names what no column holds
   */
  static Mapping read(Mapping before, PostedForm form) {
    Mapping changed = before;
    for (int index = 0; index < before.columns().size(); index++) {
      List<String> target = form.values("target." + index);
      if (!target.isEmpty()) {
        changed = changed.with(index, read(before.columns().get(index), index, form));
      }
    }
    return changed;
  }

  private static Mapping.Column read(Mapping.Column before, int index, PostedForm form) {
    String target = form.first("target." + index);
    boolean known =
        target.isEmpty()
            || target.equals(before.target())
            || target.equals(MappingTarget.LEFT_OUT)
            || MappingTarget.find(target).isPresent();
    String unit = form.first("unit." + index);
    Optional<Unit> of =
        Arrays.stream(Unit.values()).filter(one -> one.symbol().equals(unit)).findFirst();
    String numbers = form.first("numbers." + index);
    Optional<List<Statistic>> kind =
        Stream.concat(Stream.of(before.statistics()), KINDS.stream())
            .filter(one -> code(one).equals(numbers))
            .findFirst();
    if (!known || (of.isEmpty() && !unit.isEmpty()) || kind.isEmpty()) {
      Problems problems = new Problems();
      problems.add(
          "target." + index,
          "unknown-code",
          say("untidy.no-target", Map.of("column", before.header())));
      throw new WrongInputException(problems.list());
    }
    return new Mapping.Column(before.header(), target, kind.get(), of);
  }

  /** A mark of what a reading was made with, by which a page that is older is told. */
  static String mark(List<Mapping> mappings) {
    String all = mappings.stream().map(Mapping::toJson).collect(Collectors.joining("\n"));
    return UUID.nameUUIDFromBytes(all.getBytes(StandardCharsets.UTF_8)).toString();
  }
}
