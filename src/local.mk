# One archive a layer, in the order of the floors: a layer uses only those above it here.

# Floor 0: dates, running hours, amounts, text.
noinst_LIBRARIES += src/libbase.a
src_libbase_a_SOURCES = \
	src/base/amount.c \
	src/base/amount.h \
	src/base/date.c \
	src/base/date.h \
	src/base/date_parse.c \
	src/base/date_span.c \
	src/base/err.c \
	src/base/each.h \
	src/base/err.h \
	src/base/hours.c \
	src/base/key.c \
	src/base/key.h \
	src/base/length.c \
	src/base/paper.c \
	src/base/paper.h \
	src/base/quantity.c \
	src/base/quantity.h \
	src/base/text.c \
	src/base/text.h \
	src/base/typed.c \
	src/base/typed.h \
	src/base/value.h \
	src/base/water_reading.c

# Floor 1: the computation.
noinst_LIBRARIES += src/libengine.a
src_libengine_a_SOURCES = \
	src/engine/clock.c \
	src/engine/condition.c \
	src/engine/condition.h \
	src/engine/due.c \
	src/engine/due.h \
	src/engine/exposure.c \
	src/engine/forecast.c \
	src/engine/opportunity.c \
	src/engine/opportunity.h \
	src/engine/plausible.c \
	src/engine/plausible.h \
	src/engine/rates.c \
	src/engine/salinity.c \
	src/engine/salinity.h \
	src/engine/season.c \
	src/engine/timeline.c \
	src/engine/timeline.h \
	src/engine/timeline_inside.h \
	src/engine/types.h \
	src/engine/usage.c \
	src/engine/usage.h \
	src/engine/usage_ahead.c \
	src/engine/wear.c \
	src/engine/wear.h \
	src/engine/wrench.c \
	src/engine/wrench.h

# Floor 2: records and words.
noinst_LIBRARIES += src/libmodel.a
src_libmodel_a_SOURCES = \
	src/model/meter.c \
	src/model/meter.h \
	src/model/record.c \
	src/model/record.h \
	src/model/records.c \
	src/model/records.h \
	src/model/words.c \
	src/model/words.h

# Floor 3a: the SQLite file.
noinst_LIBRARIES += src/libstore.a
src_libstore_a_SOURCES = \
	src/store/apply.c \
	src/store/apply.h \
	src/store/backup.c \
	src/store/backup.h \
	src/store/bind.c \
	src/store/bind.h \
	src/store/bulk.c \
	src/store/cells.c \
	src/store/cells.h \
	src/store/change.c \
	src/store/compare.c \
	src/store/compare.h \
	src/store/db.c \
	src/store/db.h \
	src/store/entry.c \
	src/store/entry.h \
	src/store/fault.c \
	src/store/guard.c \
	src/store/guard.h \
	src/store/history.c \
	src/store/holder.c \
	src/store/holder.h \
	src/store/indexes.c \
	src/store/indexes.h \
	src/store/inside.h \
	src/store/journal.c \
	src/store/journal.h \
	src/store/migrate.c \
	src/store/migrate.h \
	src/store/rows.c \
	src/store/rows.h \
	src/store/shape.c \
	src/store/shape.h \
	src/store/spool.c \
	src/store/spool.h \
	src/store/sqlite.h \
	src/store/txn.c \
	src/store/verify.c \
	src/store/verify.h
nodist_src_libstore_a_SOURCES = \
	src/store/sql.c \
	src/store/sql.h

# The statements become one enum and one table of strings.
SQL_FILES = \
	src/store/sql/schema/0001_first.sql \
	src/store/sql/schema/0002_trade.sql \
	src/store/sql/schema/0003_jobs.sql \
	src/store/sql/schema/0004_sheets.sql \
	src/store/sql/schema/0005_stores.sql \
	src/store/sql/due.sql \
	src/store/sql/file.sql \
	src/store/sql/lists.sql \
	src/store/sql/queries.sql \
	src/store/sql/records.sql
EXTRA_DIST += $(SQL_FILES) src/store/sql2c.awk
BUILT_SOURCES += src/store/sql.h
CLEANFILES += src/store/sql.c src/store/sql.h

src/store/sql.h: $(SQL_FILES) src/store/sql2c.awk
	$(AM_V_GEN)$(MKDIR_P) src/store && (cd $(srcdir) && \
		$(AWK) -v mode=h -f src/store/sql2c.awk $(SQL_FILES)) >$@.new && mv $@.new $@
src/store/sql.c: $(SQL_FILES) src/store/sql2c.awk
	$(AM_V_GEN)$(MKDIR_P) src/store && (cd $(srcdir) && \
		$(AWK) -v mode=c -f src/store/sql2c.awk $(SQL_FILES)) >$@.new && mv $@.new $@

# Floor 3b: formats.
noinst_LIBRARIES += src/libexchange.a
src_libexchange_a_SOURCES = \
	src/exchange/cell.c \
	src/exchange/cell.h \
	src/exchange/csv_in.c \
	src/exchange/csv_in.h \
	src/exchange/csv_out.c \
	src/exchange/csv_out.h \
	src/exchange/csv_sniff.c \
	src/exchange/csv_sniff.h \
	src/exchange/json.c \
	src/exchange/json.h \
	src/exchange/record_csv.h \
	src/exchange/record_csv_in.c \
	src/exchange/record_csv_out.c \
	src/exchange/sink.c \
	src/exchange/sink.h \
	src/exchange/table.c \
	src/exchange/table.h \
	src/exchange/yard_csv.c \
	src/exchange/yard_csv.h

# Floor 4: what both front ends see.
noinst_LIBRARIES += src/liblogbook.a
src_liblogbook_a_SOURCES = \
	src/logbook/book.c \
	src/logbook/book.h \
	src/logbook/catalogue.c \
	src/logbook/catalogue.h \
	src/logbook/catalogue_boat.c \
	src/logbook/catalogue_check.c \
	src/logbook/catalogue_check.h \
	src/logbook/catalogue_digest.c \
	src/logbook/catalogue_inside.h \
	src/logbook/catalogue_news.c \
	src/logbook/catalogue_news.h \
	src/logbook/catalogue_put.c \
	src/logbook/catalogue_rows.c \
	src/logbook/catalogue_take.c \
	src/logbook/catalogue_with.c \
	src/logbook/catalogue_work.h \
	src/logbook/caution.c \
	src/logbook/caution.h \
	src/logbook/corrections.c \
	src/logbook/corrections.h \
	src/logbook/dossier.c \
	src/logbook/dossier.h \
	src/logbook/dossier_boat.c \
	src/logbook/dossier_due.c \
	src/logbook/dossier_inside.h \
	src/logbook/dossier_jobs.c \
	src/logbook/dossier_journal.c \
	src/logbook/dossier_parts.c \
	src/logbook/dossier_seasons.c \
	src/logbook/dossier_costs.c \
	src/logbook/due.c \
	src/logbook/due_found.c \
	src/logbook/due.h \
	src/logbook/due_access.c \
	src/logbook/due_list.h \
	src/logbook/due_measured.c \
	src/logbook/due_order.c \
	src/logbook/due_out.c \
	src/logbook/due_place.c \
	src/logbook/due_read.c \
	src/logbook/export.c \
	src/logbook/figure.c \
	src/logbook/figure.h \
	src/logbook/find.c \
	src/logbook/fitting_history.c \
	src/logbook/fitting_history.h \
	src/logbook/fitting_history_out.c \
	src/logbook/fluid.c \
	src/logbook/fluid.h \
	src/logbook/finding.c \
	src/logbook/finding.h \
	src/logbook/finding_inside.h \
	src/logbook/finding_meant.c \
	src/logbook/finding_out.c \
	src/logbook/finding_propose.c \
	src/logbook/finding_words.c \
	src/logbook/found.c \
	src/logbook/found.h \
	src/logbook/handover.c \
	src/logbook/handover.h \
	src/logbook/happening.c \
	src/logbook/happening.h \
	src/logbook/heed.c \
	src/logbook/heed.h \
	src/logbook/history.c \
	src/logbook/import.c \
	src/logbook/import.h \
	src/logbook/import_check.c \
	src/logbook/import_settle.c \
	src/logbook/import_known.c \
	src/logbook/import_said.c \
	src/logbook/inside.h \
	src/logbook/job.c \
	src/logbook/job.h \
	src/logbook/job_aim.c \
	src/logbook/job_inside.h \
	src/logbook/job_drive.c \
	src/logbook/job_has.c \
	src/logbook/job_offer.c \
	src/logbook/job_note.c \
	src/logbook/job_note.h \
	src/logbook/job_opening.c \
	src/logbook/job_out.c \
	src/logbook/job_page.c \
	src/logbook/job_sheet.c \
	src/logbook/job_start.c \
	src/logbook/job_starting.h \
	src/logbook/job_steps.c \
	src/logbook/job_stores.c \
	src/logbook/job_template.c \
	src/logbook/job_tick.c \
	src/logbook/job_template.h \
	src/logbook/knowledge.c \
	src/logbook/known.c \
	src/logbook/known.h \
	src/logbook/knowledge.h \
	src/logbook/measure.c \
	src/logbook/measure.h \
	src/logbook/measure_before.c \
	src/logbook/measure_parse.c \
	src/logbook/meter.c \
	src/logbook/names.c \
	src/logbook/names.h \
	src/logbook/out_file.c \
	src/logbook/out_file.h \
	src/logbook/outing.c \
	src/logbook/outing.h \
	src/logbook/page.c \
	src/logbook/page.h \
	src/logbook/paper_pdf.c \
	src/logbook/paper_pdf.h \
	src/logbook/place.c \
	src/logbook/place.h \
	src/logbook/plan.c \
	src/logbook/plan.h \
	src/logbook/photo.c \
	src/logbook/photo.h \
	src/logbook/plain_words.c \
	src/logbook/plain_words.h \
	src/logbook/readings.c \
	src/logbook/readings.h \
	src/logbook/refit.c \
	src/logbook/removal.c \
	src/logbook/removal.h \
	src/logbook/removal_doubt.c \
	src/logbook/removal_parse.c \
	src/logbook/removal_parse.h \
	src/logbook/removal_tokens.c \
	src/logbook/removal_tokens.h \
	src/logbook/second_meter.c \
	src/logbook/season_list.c \
	src/logbook/season_list.h \
	src/logbook/season_order.c \
	src/logbook/season_order.h \
	src/logbook/season_out.c \
	src/logbook/ready.c \
	src/logbook/ready.h \
	src/logbook/ready_inside.h \
	src/logbook/ready_jobs.c \
	src/logbook/ready_other.c \
	src/logbook/ready_out.c \
	src/logbook/ready_read.c \
	src/logbook/ready_task.c \
	src/logbook/service.c \
	src/logbook/service.h \
	src/logbook/service_repeat.c \
	src/logbook/service_used.c \
	src/logbook/service_used.h \
	src/logbook/service_span.c \
	src/logbook/service_span.h \
	src/logbook/shipped.c \
	src/logbook/shipped.h \
	src/logbook/stores.c \
	src/logbook/stores.h \
	src/logbook/stores_back.c \
	src/logbook/stores_check.c \
	src/logbook/stores_check.h \
	src/logbook/stores_cost.c \
	src/logbook/stores_cost.h \
	src/logbook/stores_find.c \
	src/logbook/stores_inside.h \
	src/logbook/stores_list.c \
	src/logbook/stores_put.c \
	src/logbook/stores_share.c \
	src/logbook/stores_story.c \
	src/logbook/stores_story.h \
	src/logbook/stores_take.c \
	src/logbook/stores_take.h \
	src/logbook/stores_want.c \
	src/logbook/stores_want.h \
	src/logbook/stores_why.c \
	src/logbook/transfer.h \
	src/logbook/units.c \
	src/logbook/units.h \
	src/logbook/variant.c \
	src/logbook/variant.h \
	src/logbook/waiver.c \
	src/logbook/waiver.h \
	src/logbook/why.c \
	src/logbook/why.h \
	src/logbook/wrench.c \
	src/logbook/wrench.h \
	src/logbook/yard.c \
	src/logbook/yard.h \
	src/logbook/yard_answer.c \
	src/logbook/yard_answer.h \
	src/logbook/yard_inside.h \
	src/logbook/yard_lines.c \
	src/logbook/yard_open.c \
	src/logbook/yard_read.c \
	src/logbook/yard_read.h \
	src/logbook/yard_sheet.c \
	src/logbook/yard_take.c \
	src/logbook/year.c \
	src/logbook/year.h

# Floor 5a: the command line.
noinst_LIBRARIES += src/libcli.a
src_libcli_a_SOURCES = \
	src/cli/args.c \
	src/cli/args.h \
	src/cli/cli.c \
	src/cli/cli.h \
	src/cli/cmd_catalogue.c \
	src/cli/cmd_did.c \
	src/cli/cmd_dossier.c \
	src/cli/cmd_due.c \
	src/cli/cmd_figure.c \
	src/cli/cmd_found.c \
	src/cli/cmd_happening.c \
	src/cli/cmd_help.c \
	src/cli/cmd_job.c \
	src/cli/cmd_journal.c \
	src/cli/cmd_measure.c \
	src/cli/cmd_meter.c \
	src/cli/cmd_new.c \
	src/cli/cmd_outing.c \
	src/cli/cmd_place.c \
	src/cli/cmd_plan.c \
	src/cli/cmd_season.c \
	src/cli/cmd_ready.c \
	src/cli/cmd_stores.c \
	src/cli/cmd_stores.h \
	src/cli/cmd_stores_put.c \
	src/cli/cmd_transfer.c \
	src/cli/cmd_wrench.c \
	src/cli/cmd_yard.c \
	src/cli/cmd_year.c \
	src/cli/due_text.c \
	src/cli/due_text.h \
	src/cli/plan.h \
	src/cli/season_sheet.c \
	src/cli/season_text.c \
	src/cli/season_text.h \
	src/cli/found_record.c \
	src/cli/job_close.c \
	src/cli/job_record.c \
	src/cli/job_text.c \
	src/cli/job_text.h \
	src/cli/found_text.h \
	src/cli/found_text.c \
	src/cli/show.c \
	src/cli/show.h \
	src/cli/stores_text.c \
	src/cli/stores_text.h \
	src/cli/stores_used.c

# Floor 5b: the screens.
noinst_LIBRARIES += src/libtui.a
src_libtui_a_CPPFLAGS = $(AM_CPPFLAGS) $(NCURSES_CFLAGS)
src_libtui_a_SOURCES = \
	src/tui/app.c \
	src/tui/app.h \
	src/tui/app_draw.c \
	src/tui/app_inside.h \
	src/tui/app_prompt.c \
	src/tui/draft.c \
	src/tui/draft.h \
	src/tui/cost_plot.c \
	src/tui/cost_plot.h \
	src/tui/due_story.c \
	src/tui/due_story.h \
	src/tui/due_strip.c \
	src/tui/due_strip.h \
	src/tui/edit.c \
	src/tui/edit.h \
	src/tui/editor.c \
	src/tui/editor.h \
	src/tui/fitting_story.c \
	src/tui/fitting_story.h \
	src/tui/form.c \
	src/tui/form.h \
	src/tui/form_did.c \
	src/tui/form_dossier.c \
	src/tui/form_draw.c \
	src/tui/form_draw.h \
	src/tui/form_found.c \
	src/tui/form_happening.c \
	src/tui/form_measure.c \
	src/tui/form_item.c \
	src/tui/form_job.c \
	src/tui/form_job_back.c \
	src/tui/form_job_step.c \
	src/tui/form_lot.c \
	src/tui/form_mend.c \
	src/tui/form_need.c \
	src/tui/form_new.c \
	src/tui/form_outing.c \
	src/tui/form_pass.c \
	src/tui/form_take.c \
	src/tui/form_waive.c \
	src/tui/form_plan.c \
	src/tui/form_variant.c \
	src/tui/form_yard.c \
	src/tui/form_yard_read.c \
	src/tui/form_year.c \
	src/tui/grid.c \
	src/tui/grid.h \
	src/tui/happening_words.c \
	src/tui/happening_words.h \
	src/tui/hours_plot.c \
	src/tui/hours_plot.h \
	src/tui/job_deeds.c \
	src/tui/job_draw.c \
	src/tui/job_rows.c \
	src/tui/job_story.c \
	src/tui/job_view.h \
	src/tui/keys.c \
	src/tui/keys.h \
	src/tui/list.c \
	src/tui/list.h \
	src/tui/pane.c \
	src/tui/pane.h \
	src/tui/reading_plot.c \
	src/tui/reading_plot.h \
	src/tui/season_story.c \
	src/tui/season_story.h \
	src/tui/stores_draw.c \
	src/tui/stores_rows.c \
	src/tui/stores_view.h \
	src/tui/stores_words.c \
	src/tui/term.h \
	src/tui/term_curses.c \
	src/tui/term_signals.c \
	src/tui/term_signals.h \
	src/tui/tui.c \
	src/tui/tui.h \
	src/tui/view_boat.c \
	src/tui/view_boats.c \
	src/tui/view_due.c \
	src/tui/view_findings.c \
	src/tui/view_happenings.c \
	src/tui/view_history.c \
	src/tui/view_job.c \
	src/tui/view_job_line.c \
	src/tui/view_job_pick.c \
	src/tui/view_jobs.c \
	src/tui/view_outings.c \
	src/tui/view_plan.c \
	src/tui/view_ready.c \
	src/tui/view_season_list.c \
	src/tui/view_season_lists.c \
	src/tui/view_stores.c \
	src/tui/view_text.c \
	src/tui/view_work.c \
	src/tui/view_yard.c \
	src/tui/view_yard_read.c \
	src/tui/view_yard_sheet.c \
	src/tui/view_year.c \
	src/tui/yard_page.h \
	src/tui/year_band.c \
	src/tui/year_band.h

# What a program links that may know a layer.
BASE_LIBS = src/libbase.a $(GLIB_LIBS) -lm
ENGINE_LIBS = src/libengine.a $(GSL_LIBS) $(BASE_LIBS)
MODEL_LIBS = src/libmodel.a $(ENGINE_LIBS)
STORE_LIBS = src/libstore.a $(SQLITE_LIBS) $(MODEL_LIBS)
EXCHANGE_LIBS = src/libexchange.a $(CSV_LIBS) $(JANSSON_LIBS) $(MODEL_LIBS)
LOGBOOK_LIBS = src/liblogbook.a src/libstore.a $(SQLITE_LIBS) $(GMODULE_LIBS) $(EXCHANGE_LIBS)
CLI_LIBS = src/libcli.a $(LOGBOOK_LIBS)
TUI_LIBS = src/libtui.a $(NCURSES_LIBS) $(LOGBOOK_LIBS)

# Floor 6.
bin_PROGRAMS += splitpin
splitpin_SOURCES = src/main.c
splitpin_LDADD = src/libtui.a src/libcli.a $(NCURSES_LIBS) $(LOGBOOK_LIBS)

# What is loaded when it is wanted: a program's file in form, so that no more tools are needed to build it.
if PDF
moduledir = $(pkglibdir)
module_PROGRAMS = splitpin-pdf.so
splitpin_pdf_so_SOURCES = src/pdf/pdf.c
splitpin_pdf_so_CPPFLAGS = $(AM_CPPFLAGS) $(PANGO_CFLAGS)
splitpin_pdf_so_CFLAGS = $(AM_CFLAGS) -fPIC
splitpin_pdf_so_LDFLAGS = -shared
splitpin_pdf_so_LDADD = $(PANGO_LIBS)
endif
