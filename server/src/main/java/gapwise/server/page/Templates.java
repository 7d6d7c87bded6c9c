package gapwise.server.page;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import io.javalin.http.Context;

/** The page templates, compiled at build; each takes one value named after what it shows. */
public final class Templates {
  static final String HTML = "text/html; charset=utf-8";

  private final TemplateEngine engine = TemplateEngine.createPrecompiled(ContentType.Html);

  /** Answers with a page. */
  public void show(Context context, String template, Object view) {
    context.contentType(HTML).result(written(template, view).toStream());
  }

  /** A page. */
  public byte[] bytes(String template, Object view) {
    return written(template, view).toByteArray();
  }

  private PageOutput written(String template, Object view) {
    PageOutput html = new PageOutput();
    engine.render("page/" + template + ".jte", view, html);
    return html;
  }
}
