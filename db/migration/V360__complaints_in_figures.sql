create view figure_complaint as
select c.id, c.order_id, c.reported_at, a.aspect, a.what
  from complaint c
  cross join lateral (values ('STAGE', c.stage), ('BOARD', c.board), ('SETTING', c.setting)) as a (aspect, what)
 where a.what <> '';
comment on view figure_complaint is 'What a complaint may share with others: stage, board, setting, a row for each. Read by reports.';
