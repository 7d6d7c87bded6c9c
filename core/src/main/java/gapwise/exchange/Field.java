package gapwise.exchange;

import gapwise.exchange.form.CellForm;
import gapwise.exchange.form.IdForm;
import gapwise.exchange.form.LimitedForm;
import gapwise.exchange.form.ListForm;
import gapwise.exchange.form.NumberForm;
import gapwise.exchange.form.TextForm;
import java.util.List;

/**
 * One column of the template, described once: the reader, the writer, the blank workbook and the
 * open description all come from it.
 *
 * @param name name in the header, letters, digits and underscores
 * @param title name for people
 * @param description how to fill it in
 * @param form how its cells stand for values
 * @param unit unit in words; empty when it has none or another column names it
 * @param required whether every row needs it
 * @param example a value that could stand in it; may be empty
 */
record Field<T>(
    String name,
    String title,
    String description,
    CellForm<T> form,
    String unit,
    boolean required,
    String example) {

  static <T> Field<T> of(String name, String title, String description, CellForm<T> form) {
    return new Field<>(name, title, description, form, "", false, "");
  }

  static Field<String> text(String name, String title, String description) {
    return of(name, title, description, new TextForm());
  }

  static Field<List<String>> list(String name, String title, String description) {
    return of(name, title, description + " Separate several by semicolons.", ListForm.ofTexts());
  }

  static Field<Integer> count(String name, String title, String description) {
    return of(name, title, description, LimitedForm.count());
  }

  /** A number of people and the like that cannot be 0. */
  static Field<Integer> several(String name, String title, String description) {
    return of(name, title, description, LimitedForm.several());
  }

  static Field<Integer> year(String name, String title, String description) {
    return of(name, title, description, LimitedForm.year());
  }

  static Field<String> id(String name, String title, String description) {
    return of(name, title, description, new IdForm());
  }

  /** A number that cannot be negative. */
  static Field<Double> amount(String name, String title, String description) {
    return of(name, title, description, LimitedForm.notNegative(NumberForm.plain()));
  }

  static Field<Double> number(String name, String title, String description) {
    return of(name, title, description, NumberForm.plain());
  }

  Field<T> in(String newUnit) {
    return new Field<>(name, title, description, form, newUnit, required, example);
  }

  Field<T> asRequired() {
    return new Field<>(name, title, description, form, unit, true, example);
  }

  Field<T> like(String newExample) {
    return new Field<>(name, title, description, form, unit, required, newExample);
  }
}
