package gapwise.untidy;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A table by what it tells of whom, whichever way it lies: entities (studies, groups, patients,
 * outcomes) by variables.
 *
 * @param matrix where it lies
 * @param turned whether entities stand in columns
 * @param variables its columns, or rows where turned
 * @param entities its rows, or columns where turned
 * @param names the cells that name an entity in the header, where turned
 * @param sections the line that names what an entity belongs to, by entity
 */
record Logical(
    Matrix matrix,
    boolean turned,
    List<Variable> variables,
    List<Integer> entities,
    List<List<GridCell>> names,
    List<Optional<GridCell>> sections) {
  Logical {
    Objects.requireNonNull(matrix, "matrix");
    variables = List.copyOf(variables);
    entities = List.copyOf(entities);
    names = names.stream().map(List::copyOf).toList();
    sections = List.copyOf(sections);
  }

  Optional<GridCell> cell(int entity, Variable variable) {
    return turned
        ? matrix.at(variable.at(), entities.get(entity))
        : matrix.at(entities.get(entity), variable.at());
  }

  /** The cell with what covers it, where cells are merged. */
  Optional<GridCell> covering(int entity, Variable variable) {
    return turned
        ? matrix.covering(variable.at(), entities.get(entity))
        : matrix.covering(entities.get(entity), variable.at());
  }

  /** The nearest cell above that holds a text and no ditto mark. */
  Optional<GridCell> above(int entity, Variable variable) {
    for (int before = entity - 1; before >= 0; before--) {
      Optional<GridCell> cell = cell(before, variable);
      if (cell.isPresent() && !Marks.isDitto(cell.get().text())) {
        return cell;
      }
    }
    return Optional.empty();
  }

  /** Every seen cell of an entity, coloured blanks too. */
  List<GridCell> seen(int entity) {
    List<GridCell> cells = new ArrayList<>();
    for (Variable variable : variables) {
      (turned
              ? matrix.seen(variable.at(), entities.get(entity))
              : matrix.seen(entities.get(entity), variable.at()))
          .ifPresent(cells::add);
    }
    return cells;
  }

  List<Variable> of(String target) {
    return variables.stream().filter(variable -> variable.target().equals(target)).toList();
  }

  Logical with(List<Variable> others) {
    return new Logical(matrix, turned, others, entities, names, sections);
  }
}
