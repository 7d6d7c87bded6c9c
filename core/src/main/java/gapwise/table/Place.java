package gapwise.table;

/** Places in a sheet, in the words of the person who has it open. */
final class Place {
  private Place() {}

  static String row(String sheet, int row) {
    return "sheet " + sheet + ", row " + row;
  }

  static String cell(String sheet, int row, String letter) {
    return row(sheet, row) + ", column " + letter;
  }

  static String cell(String sheet, int row, String letter, String name) {
    return cell(sheet, row, letter) + " (" + Excerpt.of(name) + ")";
  }
}
