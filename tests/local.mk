# Each check program is one file beside the source it tests, tests/LAYER/test_FILE.c, and links only the layers that
# it may know: the linker checks the floors.
if HAVE_CHECK
CHECK_TESTS = \
	tests/base/test_amount \
	tests/base/test_date \
	tests/base/test_date_parse \
	tests/base/test_date_span \
	tests/base/test_err \
	tests/base/test_hours \
	tests/base/test_key \
	tests/base/test_length \
	tests/base/test_paper \
	tests/base/test_quantity \
	tests/base/test_text \
	tests/base/test_typed \
	tests/base/test_water_reading \
	tests/engine/test_clock \
	tests/engine/test_condition \
	tests/engine/test_due \
	tests/engine/test_due_any \
	tests/engine/test_exposure \
	tests/engine/test_forecast \
	tests/engine/test_opportunity \
	tests/engine/test_plausible \
	tests/engine/test_salinity \
	tests/engine/test_season \
	tests/engine/test_timeline \
	tests/engine/test_usage \
	tests/engine/test_usage_ahead \
	tests/engine/test_wear \
	tests/engine/test_wrench \
	tests/model/test_meter \
	tests/model/test_record \
	tests/model/test_words \
	tests/store/test_backup \
	tests/store/test_bulk \
	tests/store/test_db \
	tests/store/test_guard \
	tests/store/test_journal \
	tests/store/test_migrate \
	tests/store/test_rows \
	tests/store/test_shape \
	tests/store/test_spool \
	tests/store/test_sql \
	tests/store/test_txn \
	tests/store/test_verify \
	tests/exchange/test_cell \
	tests/exchange/test_csv_in \
	tests/exchange/test_csv_out \
	tests/exchange/test_json \
	tests/exchange/test_record_csv_in \
	tests/exchange/test_record_csv_out \
	tests/exchange/test_table \
	tests/exchange/test_yard_csv \
	tests/logbook/test_book \
	tests/logbook/test_catalogue \
	tests/logbook/test_catalogue_news \
	tests/logbook/test_caution \
	tests/logbook/test_dossier \
	tests/logbook/test_due \
	tests/logbook/test_figure \
	tests/logbook/test_finding \
	tests/logbook/test_findings_trade \
	tests/logbook/test_job \
	tests/logbook/test_job_off \
	tests/logbook/test_knowledge \
	tests/logbook/test_heed \
	tests/logbook/test_measure \
	tests/logbook/test_page \
	tests/logbook/test_place \
	tests/logbook/test_plan \
	tests/logbook/test_readings \
	tests/logbook/test_season_list \
	tests/logbook/test_ready \
	tests/logbook/test_removal_parse \
	tests/logbook/test_service \
	tests/logbook/test_stores \
	tests/logbook/test_stores_cost \
	tests/logbook/test_stores_want \
	tests/logbook/test_waiver \
	tests/logbook/test_yard \
	tests/tui/test_any_key \
	tests/tui/test_app \
	tests/tui/test_boat \
	tests/tui/test_boats \
	tests/tui/test_did \
	tests/tui/test_draft \
	tests/tui/test_edit \
	tests/tui/test_findings \
	tests/tui/test_form \
	tests/tui/test_grid \
	tests/tui/test_happenings \
	tests/tui/test_history \
	tests/tui/test_job \
	tests/tui/test_job_line \
	tests/tui/test_job_screens \
	tests/tui/test_keys \
	tests/tui/test_list \
	tests/tui/test_new \
	tests/tui/test_outings \
	tests/tui/test_plan \
	tests/tui/test_reading_plot \
	tests/tui/test_ready \
	tests/tui/test_screens \
	tests/tui/test_season_list \
	tests/tui/test_text \
	tests/tui/test_stores \
	tests/tui/test_yard \
	tests/tui/test_year

tests_base_test_amount_LDADD = $(BASE_LIBS) $(CHECK_LIBS)
tests_base_test_date_LDADD = $(BASE_LIBS) $(CHECK_LIBS)
tests_base_test_date_parse_LDADD = $(BASE_LIBS) $(CHECK_LIBS)
tests_base_test_date_span_LDADD = $(BASE_LIBS) $(CHECK_LIBS)
tests_base_test_err_LDADD = $(BASE_LIBS) $(CHECK_LIBS)
tests_base_test_hours_LDADD = $(BASE_LIBS) $(CHECK_LIBS)
tests_base_test_key_LDADD = $(BASE_LIBS) $(CHECK_LIBS)
tests_base_test_length_LDADD = $(BASE_LIBS) $(CHECK_LIBS)
tests_base_test_paper_LDADD = $(BASE_LIBS) $(CHECK_LIBS)
tests_base_test_quantity_LDADD = $(BASE_LIBS) $(CHECK_LIBS)
tests_base_test_text_LDADD = $(BASE_LIBS) $(CHECK_LIBS)
tests_base_test_typed_LDADD = $(BASE_LIBS) $(CHECK_LIBS)
tests_base_test_water_reading_LDADD = $(BASE_LIBS) $(CHECK_LIBS)
tests_engine_test_clock_LDADD = $(ENGINE_LIBS) $(CHECK_LIBS)
tests_engine_test_condition_LDADD = $(ENGINE_LIBS) $(CHECK_LIBS)
tests_engine_test_due_LDADD = $(ENGINE_LIBS) $(CHECK_LIBS)
tests_engine_test_due_any_LDADD = $(ENGINE_LIBS) $(CHECK_LIBS)
tests_engine_test_exposure_LDADD = $(ENGINE_LIBS) $(CHECK_LIBS)
tests_engine_test_forecast_LDADD = $(ENGINE_LIBS) $(CHECK_LIBS)
tests_engine_test_opportunity_LDADD = $(ENGINE_LIBS) $(CHECK_LIBS)
tests_engine_test_plausible_LDADD = $(ENGINE_LIBS) $(CHECK_LIBS)
tests_engine_test_salinity_LDADD = $(ENGINE_LIBS) $(CHECK_LIBS)
tests_engine_test_season_LDADD = $(ENGINE_LIBS) $(CHECK_LIBS)
tests_engine_test_timeline_LDADD = $(ENGINE_LIBS) $(CHECK_LIBS)
tests_engine_test_usage_LDADD = $(ENGINE_LIBS) $(CHECK_LIBS)
tests_engine_test_usage_ahead_LDADD = $(ENGINE_LIBS) $(CHECK_LIBS)
tests_engine_test_wear_LDADD = $(ENGINE_LIBS) $(CHECK_LIBS)
tests_engine_test_wrench_LDADD = $(ENGINE_LIBS) $(CHECK_LIBS)
tests_model_test_meter_LDADD = $(MODEL_LIBS) $(CHECK_LIBS)
tests_model_test_record_LDADD = $(MODEL_LIBS) $(CHECK_LIBS)
tests_model_test_words_LDADD = $(MODEL_LIBS) $(CHECK_LIBS)
tests_store_test_backup_SOURCES = \
	tests/store/test_backup.c \
	tests/store/fixture.c
tests_store_test_backup_LDADD = $(STORE_LIBS) $(CHECK_LIBS)
tests_store_test_bulk_SOURCES = \
	tests/store/test_bulk.c \
	tests/store/fixture.c
tests_store_test_bulk_LDADD = $(STORE_LIBS) $(CHECK_LIBS)
tests_store_test_db_SOURCES = \
	tests/store/test_db.c \
	tests/store/fixture.c
tests_store_test_db_LDADD = $(STORE_LIBS) $(CHECK_LIBS)
tests_store_test_guard_SOURCES = \
	tests/store/test_guard.c \
	tests/store/fixture.c
tests_store_test_guard_LDADD = $(STORE_LIBS) $(CHECK_LIBS)
tests_store_test_journal_SOURCES = \
	tests/store/test_journal.c \
	tests/store/fixture.c
tests_store_test_journal_LDADD = $(STORE_LIBS) $(CHECK_LIBS)
tests_store_test_migrate_SOURCES = \
	tests/store/test_migrate.c \
	tests/store/fixture.c
tests_store_test_migrate_LDADD = $(STORE_LIBS) $(CHECK_LIBS)
tests_store_test_rows_SOURCES = \
	tests/store/test_rows.c \
	tests/store/fixture.c
tests_store_test_rows_LDADD = $(STORE_LIBS) $(CHECK_LIBS)
tests_store_test_shape_SOURCES = \
	tests/store/test_shape.c \
	tests/store/fixture.c
tests_store_test_shape_LDADD = $(STORE_LIBS) $(CHECK_LIBS)
tests_store_test_spool_SOURCES = \
	tests/store/test_spool.c \
	tests/store/fixture.c
tests_store_test_spool_LDADD = $(STORE_LIBS) $(CHECK_LIBS)
tests_store_test_sql_SOURCES = \
	tests/store/test_sql.c \
	tests/store/fixture.c
tests_store_test_sql_LDADD = $(STORE_LIBS) $(CHECK_LIBS)
tests_store_test_txn_SOURCES = \
	tests/store/test_txn.c \
	tests/store/fixture.c
tests_store_test_txn_LDADD = $(STORE_LIBS) $(CHECK_LIBS)
tests_store_test_verify_SOURCES = \
	tests/store/test_verify.c \
	tests/store/fixture.c
tests_store_test_verify_LDADD = $(STORE_LIBS) $(CHECK_LIBS)
tests_exchange_test_cell_LDADD = $(EXCHANGE_LIBS) $(CHECK_LIBS)
tests_exchange_test_csv_in_LDADD = $(EXCHANGE_LIBS) $(CHECK_LIBS)
tests_exchange_test_csv_out_LDADD = $(EXCHANGE_LIBS) $(CHECK_LIBS)
tests_exchange_test_json_LDADD = $(EXCHANGE_LIBS) $(CHECK_LIBS)
tests_exchange_test_record_csv_in_LDADD = $(EXCHANGE_LIBS) $(CHECK_LIBS)
tests_exchange_test_record_csv_out_LDADD = $(EXCHANGE_LIBS) $(CHECK_LIBS)
tests_exchange_test_table_LDADD = $(EXCHANGE_LIBS) $(CHECK_LIBS)
tests_exchange_test_yard_csv_LDADD = $(EXCHANGE_LIBS) $(CHECK_LIBS)
tests_logbook_test_book_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_catalogue_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_catalogue_news_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_caution_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_dossier_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_due_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_figure_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_finding_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_findings_trade_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_job_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_job_off_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_knowledge_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_heed_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_measure_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_page_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_place_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_plan_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_readings_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_season_list_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_ready_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_removal_parse_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_service_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_stores_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_stores_cost_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_stores_want_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_waiver_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_logbook_test_yard_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS)
tests_tui_test_any_key_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_app_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_boat_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_boats_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_did_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
if HAVE_VTERM
CHECK_TESTS += tests/tui/test_e2e
tests_tui_test_e2e_CFLAGS = $(AM_CFLAGS) $(VTERM_CFLAGS)
tests_tui_test_e2e_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS) $(VTERM_LIBS) -lutil
CHECK_TESTS += tests/tui/test_job_e2e
tests_tui_test_job_e2e_CFLAGS = $(AM_CFLAGS) $(VTERM_CFLAGS)
tests_tui_test_job_e2e_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS) $(VTERM_LIBS) -lutil
CHECK_TESTS += tests/tui/test_term
tests_tui_test_term_CFLAGS = $(AM_CFLAGS) $(VTERM_CFLAGS)
tests_tui_test_term_LDADD = $(BASE_LIBS) $(CHECK_LIBS) $(VTERM_LIBS) -lutil
endif
tests_tui_test_draft_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_edit_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_findings_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_form_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_grid_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_happenings_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_history_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_job_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_job_line_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_job_screens_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_keys_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_list_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_new_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_outings_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_plan_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_reading_plot_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_ready_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_screens_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_season_list_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_text_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_stores_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_yard_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
tests_tui_test_year_LDADD = $(TUI_LIBS) $(CHECK_LIBS)
endif

# Small programs that shell tests run against something outside.
TEST_HELPERS = \
	tests/date_steps \
	tests/due_cases \
	tests/csv_echo
if HAVE_VTERM
TEST_HELPERS += tests/tui/picture tests/tui/term_echo
endif
tests_tui_picture_SOURCES = tests/tui/picture.c
tests_tui_picture_CFLAGS = $(AM_CFLAGS) $(VTERM_CFLAGS)
tests_tui_picture_LDADD = $(LOGBOOK_LIBS) $(CHECK_LIBS) $(VTERM_LIBS) -lutil
tests_tui_term_echo_SOURCES = tests/tui/term_echo.c
tests_tui_term_echo_LDADD = $(TUI_LIBS)

tests_date_steps_SOURCES = tests/base/date_steps.c
tests_date_steps_LDADD = $(BASE_LIBS)
tests_due_cases_SOURCES = tests/engine/due_cases.c
tests_due_cases_LDADD = $(ENGINE_LIBS)
tests_csv_echo_SOURCES = tests/exchange/csv_echo.c
tests_csv_echo_LDADD = $(EXCHANGE_LIBS)

dist_check_SCRIPTS += \
	tests/base/dateutil.sh \
	tests/cli/bad_csv.sh \
	tests/cli/bad_input.sh \
	tests/cli/catalogue.sh \
	tests/cli/demo_results.sh \
	tests/cli/did.sh \
	tests/cli/due.sh \
	tests/cli/figure.sh \
	tests/cli/edge_hours.sh \
	tests/cli/edge_jobs.sh \
	tests/cli/costs.sh \
	tests/cli/edge_records.sh \
	tests/cli/edge_stores.sh \
	tests/cli/edge_work.sh \
	tests/cli/found.sh \
	tests/cli/completion.sh \
	tests/cli/job.sh \
	tests/cli/help.sh \
	tests/cli/journal.sh \
	tests/cli/measure.sh \
	tests/cli/new.sh \
	tests/cli/new_kinds.sh \
	tests/cli/place.sh \
	tests/cli/plausible.sh \
	tests/cli/readme.sh \
	tests/cli/ready.sh \
	tests/cli/round_trip.sh \
	tests/cli/season_list.sh \
	tests/cli/terminal.sh \
	tests/cli/used.sh \
	tests/cli/wear.sh \
	tests/cli/wrench.sh \
	tests/cli/paper.sh \
	tests/cli/dossier.sh \
	tests/cli/yard.sh \
	tests/cli/yard_file.sh \
	tests/demo/catalogue.sh \
	tests/demo/demo_current.sh \
	tests/demo/jobs.sh \
	tests/demo/picture.sh \
	tests/demo/reference.sh \
	tests/engine/simulate.sh \
	tests/exchange/python_csv.sh \
	tests/lint/content.sh \
	tests/lint/globals.sh \
	tests/lint/layers.sh \
	tests/lint/lists.sh \
	tests/lint/purity.sh \
	tests/lint/size.sh \
	tests/lint/words.sh

check_PROGRAMS += $(CHECK_TESTS) $(TEST_HELPERS)
TESTS = $(CHECK_TESTS) $(dist_check_SCRIPTS)
TEST_EXTENSIONS = .sh
SH_LOG_COMPILER = $(SHELL)

# Nothing of the caller's settings is seen, and no home is touched: shell tests make one each (tests/lib.sh).
AM_TESTS_ENVIRONMENT = \
	top_srcdir='$(abs_top_srcdir)'; export top_srcdir; \
	top_builddir='$(abs_top_builddir)'; export top_builddir; \
	SPLITPIN='$(abs_top_builddir)/splitpin$(EXEEXT)'; export SPLITPIN; \
	SPLITPIN_DATA='$(abs_top_srcdir)/share'; export SPLITPIN_DATA; \
	NM='$(NM)'; export NM; \
	AWK='$(AWK)'; export AWK; \
	HOME='$(abs_top_builddir)/tests/no-home'; export HOME; \
	unset XDG_DATA_HOME XDG_CONFIG_HOME XDG_CACHE_HOME XDG_STATE_HOME SPLITPIN_FILE CDPATH; \
	TZ=UTC; export TZ; \
	LC_ALL=C.UTF-8; export LC_ALL; \
	CK_DEFAULT_TIMEOUT=60; export CK_DEFAULT_TIMEOUT; \
	G_DEBUG=fatal-criticals; export G_DEBUG; \
	G_SLICE=always-malloc; export G_SLICE; \
	PYTHONDONTWRITEBYTECODE=1; export PYTHONDONTWRITEBYTECODE;

EXTRA_DIST += \
	tests/base/absurd.h \
	tests/bench/bench_tasks.h \
	tests/bench/run.sh \
	tests/cli/cells.py \
	tests/cli/common.sh \
	tests/cli/demo_results.py \
	tests/cli/costs.py \
	tests/cli/due_forms.py \
	tests/cli/flip.py \
	tests/cli/not_later.py \
	tests/cli/pick.py \
	tests/cli/readme_runs.py \
	tests/cli/terminal.py \
	tests/cli/dossier_check.py \
	tests/cli/yard_edit.py \
	tests/cli/yard_fill.py \
	tests/cli/yard_sheet.py \
	tests/demo/check_catalogue.py \
	tests/demo/check_demo.py \
	tests/demo/check_jobs.py \
	tests/demo/check_reference.py \
	tests/demo/independent.py \
	tests/demo/make_demo.py \
	tests/demo/make_variants.py \
	tests/demo/story.py \
	tests/demo/union.py \
	tests/engine/boat_case.h \
	tests/engine/boat_text.h \
	tests/engine/boat_words.h \
	tests/engine/published.h \
	tests/engine/random_boat.h \
	tests/engine/simulate.py \
	tests/engine/forecast.py \
	tests/engine/wear_rates.py \
	tests/exchange/python_csv.py \
	tests/lib.sh \
	tests/logbook/open.h \
	tests/logbook/job_open.h \
	tests/logbook/yard_open.h \
	tests/logbook/stores_open.h \
	tests/logbook/small_catalogue.h \
	tests/run.sh \
	tests/store/fixture.h \
	tests/tui/form_keys.h \
	tests/tui/jobs.h \
	tests/tui/stores_keys.h \
	tests/tui/e2e.h \
	tests/tui/pty.h \
	tests/tui/screens.h \
	tests/tui/thing.h \
	tests/data

# make bench: how quick the program is, as ratios in one run; it judges nothing and is no part of make check.
EXTRA_PROGRAMS = tests/bench/pair tests/bench/make_logbook tests/bench/screen tests/bench/bare
tests_bench_pair_SOURCES = tests/bench/pair.c
tests_bench_screen_SOURCES = tests/bench/screen.c
tests_bench_screen_LDADD = -lutil
tests_bench_bare_SOURCES = tests/bench/bare.c
tests_bench_bare_CFLAGS = $(AM_CFLAGS) $(NCURSES_CFLAGS)
tests_bench_bare_LDADD = $(NCURSES_LIBS) $(SQLITE_LIBS)
tests_bench_make_logbook_SOURCES = tests/bench/make_logbook.c
tests_bench_make_logbook_LDADD = $(STORE_LIBS)
CLEANFILES += $(EXTRA_PROGRAMS)

bench: splitpin$(EXEEXT) $(EXTRA_PROGRAMS)
	@$(AM_TESTS_ENVIRONMENT) $(SHELL) $(srcdir)/tests/bench/run.sh
.PHONY: bench
