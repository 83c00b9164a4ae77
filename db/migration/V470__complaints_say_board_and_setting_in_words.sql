-- Complaints kept the board with the id of its material ('birch-ply, 3.0 mm'), and the power of the setting as the program writes
-- it down for itself ('Percent[hundredths=1E+2]'). From now on both are words that an owner reads.
update complaint c
   set board = m.name || substr(c.board, length(m.id) + 1)
  from board_material m
 where c.board like m.id || ', % mm';

update complaint
   set setting = regexp_replace(
           setting,
           'Percent\[hundredths=[^]]*\], ([0-9]+)$',
           trim_scale(substring(setting from 'hundredths=([^]]*)\]')::numeric)::text || ' %, \1 ×')
 where setting ~ 'Percent\[hundredths=[0-9.E+-]+\], [0-9]+$';
