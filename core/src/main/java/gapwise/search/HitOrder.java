package gapwise.search;

import org.apache.lucene.search.Sort;
import org.apache.lucene.search.SortField;

/** The orders of hits; ties are settled, so that the same records always come in the same order. */
final class HitOrder {
  /** By study and, within it, as the paper orders its arms. */
  static final Sort BY_STUDY = new Sort(study(), arm());

  private HitOrder() {}

  static Sort of(StudySearch.Order order) {
    SortField first =
        switch (order) {
          case RELEVANCE -> SortField.FIELD_SCORE;
          case YEAR_DESCENDING -> number(ArmDocuments.YEAR_ORDER, SortField.Type.LONG, true);
          case YEAR_ASCENDING -> number(ArmDocuments.YEAR_ORDER, SortField.Type.LONG, false);
          case DEFECT_ASCENDING ->
              number(ArmDocuments.DEFECT_CENTRE_ORDER, SortField.Type.DOUBLE, false);
          case DEFECT_DESCENDING ->
              number(ArmDocuments.DEFECT_CENTRE_ORDER, SortField.Type.DOUBLE, true);
          case PATIENTS_DESCENDING -> number(ArmDocuments.PATIENTS, SortField.Type.LONG, true);
          case TITLE -> new SortField(ArmDocuments.TITLE_ORDER, SortField.Type.STRING);
        };
    return new Sort(first, study(), arm());
  }

  private static SortField study() {
    return new SortField(ArmDocuments.STUDY, SortField.Type.STRING);
  }

  private static SortField arm() {
    return new SortField(ArmDocuments.ARM_POSITION, SortField.Type.LONG);
  }

  /** Arms without the number come last in both directions. */
  private static SortField number(String field, SortField.Type type, boolean descending) {
    SortField sort = new SortField(field, type, descending);
    if (type == SortField.Type.DOUBLE) {
      sort.setMissingValue(descending ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY);
    } else {
      sort.setMissingValue(descending ? Long.MIN_VALUE : Long.MAX_VALUE);
    }
    return sort;
  }
}
